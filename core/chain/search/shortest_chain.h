// The labelled search over a request's graph: exact, and of all best chains the one whose part ids sort first.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/state_space.h"

#include <optional>

namespace riserun::chain {

/// A chain as its moves, first to last; empty: the two ends go straight together.
struct Route {
  std::vector<Move> moves;
  Cost cost;  // as the graph counted it
};

/// @param to_goal  distances_to_goal() of the request's goal
std::optional<Route> search(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                            const std::vector<Cost>& to_goal, const SearchLimits& limits);

}  // namespace riserun::chain
