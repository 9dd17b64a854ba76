// Why no run makes a distance, and the smallest change that would let one.
#pragma once

#include "chain/network.h"
#include "chain/result.h"

namespace riserun::chain {

NoChain why_no_span(const Network& network, const ChainRequest& request, const Span& span);

}  // namespace riserun::chain
