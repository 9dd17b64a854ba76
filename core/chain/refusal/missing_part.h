// What is not on the shelf but would complete a chain: one special-order part, or one part that does not exist.
#pragma once

#include "chain/graph/folded_catalog.h"

#include <optional>
#include <string>

namespace riserun::chain {

/// The one special-order part that completes a chain; nullopt: it takes more than one, or none helps.
std::optional<PartId> completing_special_order(const FoldedCatalog& folded, const ChainRequest& request);

/// An adapter or union between two port types that would complete a chain, as "3/4 MNPT x 3/4 MGHT adapter": one thread
/// kind before two, near sizes before far ones, fewest parts with it. nullopt: no single part would.
struct MissingPart {
  PortTypeId enter;
  PortTypeId leave;
  bool closing = false;
  std::string name;
};
std::optional<MissingPart> missing_part(const FoldedCatalog& folded, const ChainRequest& request);

}  // namespace riserun::chain
