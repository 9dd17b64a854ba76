// The best chain of a request, as a route: the labelled search, repeated with more told apart only where it has to be.
//
// How it works: the bin is first taken to be without end, and the numbers of parts and of bushings without limit. Where
// the answer then breaks a count or a limit, that one is told apart and the search repeated. Each search is of a wider
// set than the real one, so that an answer which breaks nothing is the best of the real set too.
//
// At worst one search for each part of the bin and one for each of the two limits more.
#pragma once

#include "chain/search/graph_cache.h"
#include "chain/search/shortest_chain.h"

namespace riserun::chain {

/// Provably best under the request's order; of equal chains the one whose part ids sort first, then by the ports used.
/// nullopt: there is none.
/// @param extras  what the graph holds beside what the request lets in; which parts of the bin are counted is set here
/// @throws InputError where the bin has more scarce parts than can be told apart
std::optional<Route> best_chain(const FoldedCatalog& folded, const ChainRequest& request, GraphExtras extras = {});
/// The same; a plain request (GraphCache::is_plain) takes what earlier ones have left.
std::optional<Route> best_chain(const PreparedCatalog& prepared, const ChainRequest& request);

std::int64_t part_count(const std::vector<Move>& moves);
std::int64_t bushing_count(const std::vector<Move>& moves);

}  // namespace riserun::chain
