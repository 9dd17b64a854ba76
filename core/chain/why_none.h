// Why there is no chain: what can be got to from each side, and the smallest change that would make one.
#pragma once

#include "chain/network.h"
#include "chain/result.h"

namespace riserun::chain {

/// @pre best_route() of the same request found none
NoChain why_none(const Network& network, const ChainRequest& request);

/// "these two cannot both be kept: ...": rules in words, at least one.
std::string conflict_sentence(const std::vector<std::string>& rules);

}  // namespace riserun::chain
