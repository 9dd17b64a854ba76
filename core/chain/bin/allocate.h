// One bin for several runs: which of its parts goes into which run, best for all of them together.
//
// How it works: branch and bound, best first (A. H. Land and A. G. Doig, "An automatic method of solving discrete
// programming problems", Econometrica 28, 1960; from memory). Each run is first served as if the bin were its own,
// which bounds every sharing. Where they take more of a part than there is, one run either does with less of it, or
// keeps what it takes and the others share the rest; the first sharing that takes no part too often is the best.
//
// Each run is searched once for each different share of the bin. Worst case: as many shares as there are ways to deal
// the contested parts out, exponential in the runs that want the same part.
#pragma once

#include "chain/ask/allocation.h"
#include "chain/bin/served.h"
#include "chain/search/graph_cache.h"

namespace riserun::chain {

/// The allocation that leaves fewest demands unmet, then makes the distances asked for in the plainest ways (SpanMake,
/// added up), then has the least sum of all costs under the order. Of equal sums the one whose first demand is better
/// off, then the second, and so on: a chain of less cost, then the one that lands nearest, then the usual tie of chains
/// (fewer bushings and close nipples, ids that sort first, ports used) or of assemblies (AssemblyRequest), then the end
/// part that stands first, from the bin before bought. Each run is of one material by itself. Exact.
/// @param before  what earlier allocations from the same catalog found, and this one adds to; nullptr: nothing
Allocation allocate(const PreparedCatalog& prepared, const std::vector<Demand>& demands, const catalog::Bin& bin,
                    Order order, Served* before);

}  // namespace riserun::chain
