// Turns a route into the chain that is shown: joints, sums, build order, cautions.
#pragma once

#include "chain/ask/answer.h"
#include "chain/part/move.h"

namespace riserun::chain {

/// What of the chain must be bought, in chain order, plugs behind the part that they are in; a part twice where two
/// are.
std::vector<PartId> bought_parts(const Chain& chain);

Chain assemble(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves);

}  // namespace riserun::chain
