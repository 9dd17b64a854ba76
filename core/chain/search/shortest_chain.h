// The labelled search over a request's graph: exact, and of all best chains the one whose part ids sort first.
//
// How it works: states (an open end, and what the rules must remember) are vertices of a graph that grows as it is
// walked by A* (Boost's astar_search_no_init) with exact potentials, so that little off the best chains is settled. It
// goes on past the goal through all that costs as much, and of these chains the best is taken by what decides between
// them, at last by ids. Where nothing but cost is told apart, the potentials are the whole answer, and it is read off
// them.
//
// O(n log n) in the states within the best cost; at worst open ends x sets of needs x what is counted of the bin.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/state_space.h"

#include <optional>

namespace riserun::chain {

/// A chain as its moves, first to last; empty: the two ends go straight together.
struct Route {
  std::vector<Move> moves;
  Cost cost;  // as the graph counted it
  Rest rest;  // what decides between equal costs
};

/// @param to_goal  distances_to_goal() of the request's goal
std::optional<Route> search(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                            const std::vector<Cost>& to_goal, const SearchLimits& limits);

}  // namespace riserun::chain
