// The Pareto set of a request's chains over parts, price to pay (cents), length end to end (micrometres), head lost at
// the flow (nanometres) and parts to buy: the chains that no other dominates.
//
// How it works: a label is a beginning of a chain. Labels are settled by the parts that the whole chain comes to at
// least, and one that another label of its state dominates, or, with its potential, a chain that is found, is left out
// (E. Q. V. Martins, "On a multicriteria shortest path problem", European Journal of Operational Research 16, 1984;
// from memory). Boost's r_c_shortest_paths was tried in its place: the same answers, 3.9 times slower on this step,
// since it knows no potentials and keeps each label in a heap.
//
// Worst case: labels grow with the number of undominated chains, which is exponential in the parts of a chain; the
// margin keeps it small. On the shipped catalog some hundreds.
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
