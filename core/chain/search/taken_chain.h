// The run that a person has chosen, under the rules of the request.
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
/// The bin is handed out along the run. Exact; the cost is what a graph of the request counts for the same moves. Work
/// grows with the parts times their ports squared.
///
/// @pre request.taken
std::variant<Route, NotTaken> taken_chain(const FoldedCatalog& folded, const ChainRequest& request);

}  // namespace riserun::chain
