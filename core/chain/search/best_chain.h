// The best chain of a request, as a route: the labelled search, repeated with more told apart only where it has to be.
#pragma once

#include "chain/search/graph_cache.h"
#include "chain/search/shortest_chain.h"

namespace riserun::chain {

/// Provably best. At worst one search for each part of the bin and one for each of the two limits more. The bin is
/// first taken to be without end and the numbers of parts and of bushings without limit; where the answer then breaks a
/// count or the limit, that one is told apart and the search repeated. Each search is of a wider set than the real one,
/// so that an answer which breaks nothing is the best of the real set too.
std::optional<Route> best_chain(const FoldedCatalog& folded, const ChainRequest& request, GraphExtras extras = {});
/// The same; a plain request (GraphCache::is_plain) takes what earlier ones have left.
std::optional<Route> best_chain(const PreparedCatalog& prepared, const ChainRequest& request);

/// How often the route takes each part of the request's bin, by row of the bin, beyond its count included.
std::vector<int> uses_of_bin(const ChainRequest& request, const std::vector<Move>& moves);

std::int64_t part_count(const std::vector<Move>& moves);
std::int64_t bushing_count(const std::vector<Move>& moves);

}  // namespace riserun::chain
