// What to buy where nothing may be bought and the bin alone does not make the chain: one search (best_chain) in the
// order of the bin with everything on sale.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

/// The fewest parts to buy, and the cheapest of those, that complete a chain of the request where some parts are not to
/// be had (`not_sold`); in chain order. Empty: nothing on sale completes one.
std::vector<PartId> cheapest_purchase(const FoldedCatalog& folded, const ChainRequest& request);

}  // namespace riserun::chain
