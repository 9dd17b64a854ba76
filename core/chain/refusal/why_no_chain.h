// Why there is no chain: what can be got to from each side, and the smallest change that would make one.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/span.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

/// The refusal of a run that was taken.
NoChain why_not_taken(quantity::Fact reason);

/// The reason, what can be got to from either side, and every single change that mends it, or else the least change of
/// several rules; each with what the chain then costs.
/// @pre best_chain() of the same request found none
/// @param span  a distance that a change must make as well; nullptr: none is asked for
NoChain why_no_chain(const FoldedCatalog& folded, const ChainRequest& request, const Span* span = nullptr);

}  // namespace riserun::chain
