// Why no run makes a distance, and the smallest change that would let one.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

NoChain why_no_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

}  // namespace riserun::chain
