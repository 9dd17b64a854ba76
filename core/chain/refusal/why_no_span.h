// Why no run makes a distance, and the smallest change that would let one.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

/// The reason, the nearest distances that some run makes, and what could be given up instead.
/// @pre best_span() of the same request found none
NoChain why_no_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

}  // namespace riserun::chain
