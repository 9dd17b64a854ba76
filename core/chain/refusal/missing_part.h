// What is not on the shelf but would complete a chain: one special-order part, or one part that does not exist.
//
// How it works: such parts are let into the graph at a wish each, which weighs more than all else, and the best chain
// is asked for; with just one wish in it, that is the part. One search each; of parts that do not exist the graph gets
// those between ends that the two sides reach, heavier the less likely it is that somebody makes them.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

#include <optional>

namespace riserun::chain {

/// The one special-order part that completes a chain; nullopt: it takes more than one, or none helps.
std::optional<PartId> completing_special_order(const FoldedCatalog& folded, const ChainRequest& request);

/// A part between two port types.
struct MissingPart {
  PortTypeId enter;
  PortTypeId leave;
  bool closing = false;  // a union
};

/// An adapter between two unlike port types, or a union, that would complete a chain: one thread kind before two, near
/// sizes before far ones, fewest parts with it. nullopt: no single part would.
std::optional<MissingPart> missing_part(const FoldedCatalog& folded, const ChainRequest& request);

}  // namespace riserun::chain
