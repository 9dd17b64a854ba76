// What to take when a part of a chain is not on the shelf and the rest of it lies in the cart: for each part one search
// (best_chain) in which it is not sold, the cart is as good as the bin and each purchase weighs as a wish.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

/// For each different part that the chain buys, in chain order: the best chain of the same request that buys none of
/// it. All else that the chain buys lies in the cart and is as good as in the bin. Fewest further purchases come first,
/// then the request's order, for which the cart is paid. What the bin has of the part stays usable.
///
/// @param chain  an answer to the request
std::vector<Substitute> substitutes(const FoldedCatalog& folded, const ChainRequest& request, const Chain& chain);

}  // namespace riserun::chain
