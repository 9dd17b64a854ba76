// Other chains than the best one that a person may prefer.
//
// How it works: the Pareto set of the request over five measures (pareto_chains), made again with a part of the bin or
// the bushings counted where a chain of it breaks a count; then sorted, and folded where only the materials differ.
#pragma once

#include "chain/ask/answer.h"
#include "chain/search/graph_cache.h"

namespace riserun::chain {

/// The best chain, and with it every chain of up to kMorePartsThanFewest parts more than the fewest possible which no
/// other such chain beats: is at least as good as in parts, price to pay, length end to end, head lost at the flow and
/// parts to buy, and better in one. Exact, under all rules of the request, in whole cents, micrometres and nanometres
/// of head; a part whose bore is not known counts no head. Of chains equal in all five: fewest bushings and close
/// nipples, then the first by part ids.
///
/// The best chain stands first, also where one that ties with it under the order beats it in the other measures. The
/// rest follow by the request's order, then by ids. A row that has, place by place, the family, the size and the ports
/// of one before it, and differs in the material of at least one place, is folded under the first such row.
///
/// @param most_rows  after folding, > 0
/// @return empty: there is no chain
std::vector<Alternative> alternatives(const PreparedCatalog& prepared, const ChainRequest& request,
                                      std::size_t most_rows);

}  // namespace riserun::chain
