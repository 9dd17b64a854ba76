// The states of a request's search and what follows what: the one place that says which part may be put on next. At
// most open ends x sets of needs (256) x 2, and, where they are told apart, x parts, bushings and counts of the bin.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/search_state.h"

namespace riserun::chain {

/// What is told apart in the states beside where they are and how far they have come.
struct SearchLimits {
  std::optional<int> most_parts;     // plugs included
  std::optional<int> most_bushings;  // needs a graph with GraphExtras::counts_bushings
};

class StateSpace {
 public:
  /// Keeps references to the rules and to the graph.
  StateSpace(const Rules& rules, const PortGraph& graph, const SearchLimits& limits);

  SearchState start() const { return {start_node(), at_the_start(rules_)}; }
  /// Where all chains end: nothing is told apart there.
  SearchState goal() const { return {start_node() + 1, {0, true}}; }
  std::uint32_t node_count() const { return start_node() + 2; }
  bool is_start(const SearchState& state) const { return state.node == start_node(); }
  bool is_goal(const SearchState& state) const { return state.node > start_node(); }

  std::span<const Arc> arcs(const SearchState& state) const {
    return is_start(state) ? std::span<const Arc>(first_arcs_) : graph_.arcs(state.node);
  }
  /// nullopt: the part may not follow.
  std::optional<SearchState> after(const SearchState& before, const Arc& arc) const;
  /// The joint onto the last port; nullopt: the chain cannot end here.
  std::optional<LastJoint> last_joint(const SearchState& state) const;

 private:
  std::uint32_t start_node() const { return static_cast<std::uint32_t>(graph_.nodes().size()); }

  const Rules& rules_;
  const PortGraph& graph_;
  const SearchLimits limits_;
  const BinDigits digits_;
  const bool counts_;  // something is, so that an arc's move has to be looked at
  const std::vector<Arc> first_arcs_;
};

}  // namespace riserun::chain
