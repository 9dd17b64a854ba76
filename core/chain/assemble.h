// Turns a route into the chain that is shown: joints, sums, build order, cautions.
#pragma once

#include "chain/moves.h"
#include "chain/result.h"

namespace riserun::chain {

Chain assemble(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves);

}  // namespace riserun::chain
