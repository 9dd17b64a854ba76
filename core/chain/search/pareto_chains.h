// The chains of a request that no other chain beats in every measure at once: parts, price to pay, length end to end,
// head lost at the flow, parts to buy.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/shortest_chain.h"

namespace riserun::chain {

/// Chains of up to the fewest parts possible and `margin` more of which none other among them is at least as good in
/// every measure and better in one. Of chains equal in all measures the one with fewest bushings and close nipples,
/// then the one whose ids sort first (plugs behind the part that they are in), then by the ports used. Exact; the order
/// of the request plays no part. Each route's cost is its measures side by side.
///
/// @param graph    made with GraphExtras::all_measures
/// @param most_bushings  what of the request's limit is kept to; needs a graph with GraphExtras::counts_bushings
/// @param to_goal  distances_to_goal() of the request's goal: bounds, each measure's least by itself
std::vector<Route> pareto_chains(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                 const std::vector<Cost>& to_goal, int margin, std::optional<int> most_bushings = {});

}  // namespace riserun::chain
