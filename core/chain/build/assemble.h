// Turns what a search found into the run that is shown: parts, joints, sums, build order, cautions.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/part/move.h"
#include "chain/tree/steiner_search.h"

namespace riserun::chain {

/// What of the run must be bought, from the base outwards, plugs behind the part that they are in; a part twice where
/// two are.
std::vector<PartId> bought_parts(const Run& run);

/// What was found, as it is shown; prices in whole cents, lengths as the catalog has them. O(parts^2).
Chain assemble(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves);
Assembly assemble(const Catalog& catalog, const AssemblyRequest& request, const BranchTree& tree);

}  // namespace riserun::chain
