// One bin for several runs: which of its parts goes into which run, best for all of them together.
#pragma once

#include "chain/ask/allocation.h"
#include "chain/search/graph_cache.h"

namespace riserun::chain {

/// The allocation that leaves fewest demands unmet, then makes the distances asked for in the plainest ways (SpanMake,
/// added up), then has the least sum of all costs under the order. Of equal sums
/// the one whose first demand is better off, then the second, and so on: a chain of less cost, then the
/// one that lands nearest, then the usual tie of
/// chains (fewer bushings and close nipples, ids that sort first, ports used) or of assemblies (AssemblyRequest), then
/// the end part that stands first, from the bin before bought. Exact.
Allocation allocate(const PreparedCatalog& prepared, const std::vector<Demand>& demands, const catalog::Bin& bin,
                    Order order);

}  // namespace riserun::chain
