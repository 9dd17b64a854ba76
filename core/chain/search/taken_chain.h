// The run that a person has chosen, under the rules of the request.
//
// How it works: the parts are read into links, a part and the plugs behind it; then all ways through the links so far
// are kept, one for each port that the last part is left by and for whether a closing joint is made: what comes later
// sees no more of them. The rules are those that a graph of the request lets its arcs in by. O(parts * ports^3) at
// most.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/search/shortest_chain.h"
#include "quantity/fact.h"

#include <variant>

namespace riserun::chain {

/// Why the run of ChainRequest::taken cannot be: the part, the joint or the rule.
struct NotTaken {
  quantity::Fact reason;
};

/// Walks the parts of `taken` one by one through the rules of the request. Where a part does not say by which ports it
/// is gone through, the ways that the order likes best are taken, and of equal ones those by the ports that come first.
/// The bin is handed out along the run. Exact; the cost is what a graph of the request counts for the same moves.
///
/// @pre request.taken
std::variant<Route, NotTaken> taken_chain(const FoldedCatalog& folded, const ChainRequest& request);

}  // namespace riserun::chain
