// What a store must order, where that keeps a line's size and kind and nothing on the shelf does.
#pragma once

#include "chain/ask/answer.h"
#include "chain/search/graph_cache.h"

namespace riserun::chain {

/// Adds to what the best chain of a request keeps of its line: the special-order parts of the best chain that keeps
/// size and kind, where this one does not. One search more, and only there.
/// @pre the chain is the best of its request
void add_order_instead(const PreparedCatalog& prepared, const ChainRequest& request, Chain& chain);

}  // namespace riserun::chain
