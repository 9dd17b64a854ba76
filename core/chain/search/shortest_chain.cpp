#include "chain/search/shortest_chain.h"

#include "chain/search/best_of_equal.h"
#include "chain/search/potentials.h"
#include "chain/search/state_space.h"
#include "chain/search/tight_arcs.h"

#include <boost/graph/astar_search.hpp>
#include <boost/property_map/function_property_map.hpp>

#include <algorithm>
#include <unordered_map>

namespace riserun::chain {

namespace {

struct State {
  SearchState state;
  Cost cost = kUnreachable;      // of the best beginning found
  Cost estimate = kUnreachable;  // and with the potential: of a whole chain
  boost::default_color_type color = boost::white_color;
};

struct StateEdge {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::uint32_t move = kNoRow;  // kNoRow: the last joint
  Cost cost;
  bool operator==(const StateEdge&) const = default;
};

class ChainSearch;

/// The states as Boost.Graph's IncidenceGraph: the edges out of one are made when they are asked for.
struct StateGraph {
  using vertex_descriptor = std::uint32_t;
  using edge_descriptor = StateEdge;
  using out_edge_iterator = const StateEdge*;
  using directed_category = boost::directed_tag;
  using edge_parallel_category = boost::allow_parallel_edge_tag;
  using traversal_category = boost::incidence_graph_tag;
  using degree_size_type = std::size_t;

  ChainSearch* search;
};

std::pair<const StateEdge*, const StateEdge*> out_edges(std::uint32_t state, const StateGraph& graph);
std::size_t out_degree(std::uint32_t state, const StateGraph& graph) {
  const auto [first, last] = out_edges(state, graph);
  return static_cast<std::size_t>(last - first);
}
std::uint32_t source(const StateEdge& edge, const StateGraph&) { return edge.from; }
std::uint32_t target(const StateEdge& edge, const StateGraph&) { return edge.to; }

/// A member of the states as a property map. States come to lie elsewhere as they grow in number.
template <class Value>
struct StateMap {
  using key_type = std::uint32_t;
  using value_type = Value;
  using reference = Value&;
  using category = boost::lvalue_property_map_tag;

  std::vector<State>* states;
  Value State::*member;

  Value& operator[](std::uint32_t state) const { return (*states)[state].*member; }
  friend Value& get(const StateMap& map, std::uint32_t state) { return map[state]; }
  friend void put(const StateMap& map, std::uint32_t state, const Value& value) { map[state] = value; }
};

class ChainSearch {
 public:
  ChainSearch(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const std::vector<Cost>& to_goal,
              const SearchLimits& limits)
      : folded_(folded),
        graph_(graph),
        request_(rules.request()),
        potentials_(graph, rules, to_goal),
        space_(rules, graph, limits) {}

  std::optional<Route> run();

  std::span<const StateEdge> edges_out_of(std::uint32_t row);
  Cost potential(std::uint32_t row);
  void relaxed(const StateEdge& edge);
  void not_relaxed(const StateEdge& edge);
  /// All best chains are known.
  bool is_done_at(std::uint32_t row) const { return goal_ != kNoRow && states_[row].estimate > states_[goal_].cost; }

 private:
  std::uint32_t row_of(const SearchState& state);

  const FoldedCatalog& folded_;
  const PortGraph& graph_;
  const ChainRequest& request_;
  Potentials potentials_;
  const StateSpace space_;
  std::vector<State> states_;
  std::unordered_map<SearchState, std::uint32_t, SearchStateHash> rows_;
  std::vector<StateEdge> edges_;  // out of the state that is settled now
  TightArcs tight_;
  std::uint32_t goal_ = kNoRow;
};

std::pair<const StateEdge*, const StateEdge*> out_edges(std::uint32_t state, const StateGraph& graph) {
  const std::span<const StateEdge> edges = graph.search->edges_out_of(state);
  return {edges.data(), edges.data() + edges.size()};
}

struct Done {};

class Watching : public boost::default_astar_visitor {
 public:
  explicit Watching(ChainSearch& search) : search_(search) {}
  void examine_vertex(std::uint32_t state, const StateGraph&) {
    if (search_.is_done_at(state)) throw Done();
  }
  void edge_relaxed(const StateEdge& edge, const StateGraph&) { search_.relaxed(edge); }
  void edge_not_relaxed(const StateEdge& edge, const StateGraph&) { search_.not_relaxed(edge); }

 private:
  ChainSearch& search_;
};

std::optional<Route> ChainSearch::run() {
  const std::uint32_t start = row_of(space_.start());
  states_[start].cost = states_[start].estimate = {};
  const StateGraph states{this};
  const auto weight =
      boost::make_function_property_map<StateEdge>([](const StateEdge& edge) -> const Cost& { return edge.cost; });
  try {
    boost::astar_search_no_init(
        states, start, [this](std::uint32_t row) { return potential(row); }, Watching(*this),
        boost::dummy_property_map(), StateMap<Cost>{&states_, &State::estimate}, StateMap<Cost>{&states_, &State::cost},
        weight, StateMap<boost::default_color_type>{&states_, &State::color},
        boost::typed_identity_property_map<std::uint32_t>(), std::less<>(), std::plus<>(), kUnreachable, Cost{});
  } catch (const Done&) {
  }
  if (goal_ == kNoRow) return std::nullopt;
  const Cost& cost = states_[goal_].cost;
  if (!keeps_the_line(request_.order))
    return Route{tight_.first_by_ids(folded_, graph_.moves(), start, goal_), cost, {}};
  EqualChains equal(folded_, graph_.moves(), end_metals(folded_.catalog(), request_));
  const auto onward = tight_.turned_round(goal_);
  equal.gather(start, [&](std::uint32_t state, auto arc, auto end) {
    for (const TightArcs::Onward& next : onward[state]) {
      if (next.move == kNoRow) end(Rest{});
      if (next.move == kNoRow) continue;
      for (std::uint32_t move = next.move; move < graph_.alike_end(next.move); ++move) arc(move, next.to);
    }
  });
  BestOfEqual best = equal.best();
  return Route{std::move(best.moves), cost, best.rest};
}

std::uint32_t ChainSearch::row_of(const SearchState& state) {
  const auto [found, is_new] = rows_.try_emplace(state, static_cast<std::uint32_t>(states_.size()));
  if (is_new) states_.push_back({state});
  return found->second;
}

Cost ChainSearch::potential(std::uint32_t row) {
  const SearchState& state = states_[row].state;
  return space_.is_goal(state) ? Cost{} : potentials_.from(state.node, state.progress);
}

std::span<const StateEdge> ChainSearch::edges_out_of(std::uint32_t row) {
  edges_.clear();
  const SearchState state = states_[row].state;
  if (space_.is_goal(state)) return edges_;
  if (const std::optional<LastJoint> last = space_.last_joint(state)) {
    goal_ = row_of(space_.goal());
    edges_.push_back({row, goal_, kNoRow, last->cost});
  }
  for (const Arc& arc : space_.arcs(state)) {
    const std::optional<SearchState> next = space_.after(state, arc);
    if (next && potentials_.from(next->node, next->progress) != kUnreachable)
      edges_.push_back({row, row_of(*next), arc.move, arc.cost});
  }
  return edges_;
}

void ChainSearch::relaxed(const StateEdge& edge) {
  tight_.forget(edge.to);
  tight_.add(edge.from, edge.move, edge.to);
}

void ChainSearch::not_relaxed(const StateEdge& edge) {
  if (states_[edge.from].cost + edge.cost == states_[edge.to].cost) tight_.add(edge.from, edge.move, edge.to);
}

// Where nothing but cost is told apart, the distances to the goal are the whole answer: it is read off by walking down.
std::optional<Route> read_off(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                              const std::vector<Cost>& to_goal) {
  const ChainRequest& request = rules.request();
  const auto start = static_cast<std::uint32_t>(graph.nodes().size());
  const std::vector<Arc> first = graph.arcs_from(rules, request.from);
  const auto direct = graph.last_joint(rules, PortGraph::start_of(request), request.to);
  Cost best = direct ? direct->cost : kUnreachable;
  // An end that leads nowhere is as far as none, and more than any sum when something is added.
  for (const Arc& arc : first) best = std::min(best, arc.cost + to_goal[arc.to]);
  if (best == kUnreachable) return std::nullopt;
  if (keeps_the_line(request.order)) {
    EqualChains equal(folded, graph.moves(), end_metals(folded.catalog(), request));
    equal.gather(start, [&](std::uint32_t state, auto emit, auto end) {
      const bool at_start = state == start;
      const Cost& left = at_start ? best : to_goal[state];
      for (const Arc& arc : at_start ? std::span<const Arc>(first) : graph.arcs(state)) {
        if (arc.cost + to_goal[arc.to] != left) continue;
        for (std::uint32_t move = arc.move; move < graph.alike_end(arc.move); ++move) emit(move, arc.to);
      }
      const auto last = at_start ? direct : graph.last_joint(rules, graph.nodes()[state], request.to);
      if (last && last->cost == left) end(Rest{});
    });
    BestOfEqual chosen = equal.best();
    return Route{std::move(chosen.moves), best, chosen.rest};
  }
  FirstByIds walk(folded, graph.moves(), [&](std::uint32_t state, auto emit) {
    const bool at_start = state == start;
    const Cost& left = at_start ? best : to_goal[state];
    for (const Arc& arc : at_start ? std::span<const Arc>(first) : graph.arcs(state))
      if (arc.cost + to_goal[arc.to] == left) emit(arc.move, arc.to);
    const auto last = at_start ? direct : graph.last_joint(rules, graph.nodes()[state], request.to);
    if (last && last->cost == left) emit(UINT32_MAX, 0u);
  });
  return Route{walk.from(start), best, {}};
}

bool only_cost_counts(const Rules& rules, const PortGraph& graph, const SearchLimits& limits) {
  return rules.closing() == Closing::none && rules.need_groups().empty() && !limits.most_parts &&
         !limits.most_bushings && !graph.counts_the_bin();
}

}  // namespace

std::optional<Route> search(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                            const std::vector<Cost>& to_goal, const SearchLimits& limits) {
  if (only_cost_counts(rules, graph, limits)) return read_off(folded, rules, graph, to_goal);
  return ChainSearch(folded, rules, graph, to_goal, limits).run();
}

}  // namespace riserun::chain
