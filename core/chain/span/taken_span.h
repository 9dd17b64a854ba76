// The run that a person has chosen, where it must make a distance: as a request that lets nothing else in.
#pragma once

#include "chain/ask/request.h"
#include "chain/graph/folded_catalog.h"
#include "chain/part/move.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// The same question with only the parts of ChainRequest::taken, asked for in their order; all that the rules ask of
/// the run as a whole holds then. nullopt: the rules do not let the run in.
///
/// Of a run of more than eight parts eight are asked for, so that what answers may have them in another order.
///
/// @pre request.taken
std::optional<ChainRequest> pinned_to_taken(const FoldedCatalog& folded, const ChainRequest& request);

/// The moves are those parts in that order, each gone through as the person said where it was said.
bool is_taken(const std::vector<Move>& moves, const std::vector<TakenPart>& taken);

}  // namespace riserun::chain
