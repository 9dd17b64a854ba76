#include "chain/search/shortest_chain.h"

#include "chain/search/first_by_ids.h"
#include "chain/search/potentials.h"
#include "chain/search/search_state.h"

#include <algorithm>
#include <queue>
#include <unordered_map>

namespace riserun::chain {

namespace {

/// An arc on a shortest way to its state, kept in a list at the state that it leads to.
struct TightArc {
  std::uint32_t from = 0;
  std::uint32_t move = kNoRow;  // kNoRow: the last joint
  std::uint32_t next = kNoRow;
};

struct State {
  SearchState place;
  Cost cost;
  std::uint32_t tight = kNoRow;
  bool settled = false;
};

class Search {
 public:
  Search(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const std::vector<Cost>& to_goal,
         const SearchLimits& limits)
      : folded_(folded),
        rules_(rules),
        graph_(graph),
        left_(graph, rules, to_goal),
        limits_(limits),
        digits_(rules.request().bin, graph.moves()) {}

  std::optional<Route> run();

 private:
  void expand(std::uint32_t state);
  void follow(std::uint32_t state, const Arc& arc);
  void finish(std::uint32_t state);
  void reach(const SearchState& place, const Cost& cost, std::uint32_t from, std::uint32_t move);
  Route first_in_order() const;
  std::vector<std::vector<TightArc>> arcs_on_best_chains() const;

  std::uint32_t start_node() const { return static_cast<std::uint32_t>(graph_.nodes().size()); }
  std::uint32_t goal_node() const { return start_node() + 1; }

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const PortGraph& graph_;
  Potentials left_;
  const SearchLimits& limits_;
  const BinDigits digits_;
  std::vector<State> states_;
  std::vector<TightArc> tight_arcs_;
  std::unordered_map<SearchState, std::uint32_t, SearchStateHash> known_;
  using Entry = std::pair<Cost, std::uint32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open_;
  std::uint32_t goal_ = kNoRow;
};

std::optional<Route> Search::run() {
  reach({start_node(), 0, rules_.closing() == Closing::none, 0, 0}, {}, kNoRow, kNoRow);
  while (!open_.empty()) {
    const auto [estimate, state] = open_.top();
    if (goal_ != kNoRow && estimate > states_[goal_].cost) break;
    open_.pop();
    if (states_[state].settled) continue;
    states_[state].settled = true;
    expand(state);
  }
  if (goal_ == kNoRow) return std::nullopt;
  return first_in_order();
}

void Search::expand(std::uint32_t state) {
  const std::uint32_t node = states_[state].place.node;
  if (node == goal_node()) return;
  finish(state);
  if (node == start_node()) {
    for (const Arc& arc : graph_.arcs_from(rules_, rules_.request().from)) follow(state, arc);
  } else {
    for (const Arc& arc : graph_.arcs(node)) follow(state, arc);
  }
}

void Search::follow(std::uint32_t state, const Arc& arc) {
  const Move& move = graph_.moves()[arc.move];
  SearchState place = states_[state].place;
  place.node = arc.to;
  place.closed = place.closed || arc.closes;
  const std::uint8_t met = rules_.advance(place.met, arc.groups);
  if (arc.only_for_need && met == place.met) return;
  place.met = met;
  if (left_.from(place.node, place.met, place.closed) == kUnreachable) return;
  if (limits_.most_parts) {
    const std::int64_t parts = place.parts + move.own.parts;
    if (parts > *limits_.most_parts) return;
    place.parts = static_cast<std::uint16_t>(parts);
  }
  if (limits_.most_bushings && move.bushing && ++place.bushings > *limits_.most_bushings) return;
  if (!digits_.spend(place.spent, move)) return;
  reach(place, states_[state].cost + arc.cost, state, arc.move);
}

void Search::finish(std::uint32_t state) {
  const SearchState& place = states_[state].place;
  if (!rules_.satisfied(place.met)) return;
  const ChainRequest& request = rules_.request();
  const bool at_start = place.node == start_node();
  const auto last =
      graph_.last_joint(rules_, at_start ? PortGraph::start_of(request) : graph_.nodes()[place.node], request.to);
  if (!last || !(place.closed || last->closes)) return;
  reach({goal_node(), 0, true, 0, 0}, states_[state].cost + last->cost, state, kNoRow);
}

void Search::reach(const SearchState& place, const Cost& cost, std::uint32_t from, std::uint32_t move) {
  const auto [found, is_new] = known_.try_emplace(place, static_cast<std::uint32_t>(states_.size()));
  if (is_new) states_.push_back({place, cost, kNoRow, false});
  State& state = states_[found->second];
  if (place.node == goal_node()) goal_ = found->second;
  if (is_new || cost < state.cost) {
    state.cost = cost;
    state.tight = kNoRow;
    const bool is_node = place.node < start_node();
    open_.push({is_node ? cost + left_.from(place.node, place.met, place.closed) : cost, found->second});
  }
  if (cost != state.cost || from == kNoRow) return;
  tight_arcs_.push_back({from, move, state.tight});
  state.tight = static_cast<std::uint32_t>(tight_arcs_.size() - 1);
}

// Turns the lists of arcs into states around: for each state on a best chain, the arcs that lead on along one.
std::vector<std::vector<TightArc>> Search::arcs_on_best_chains() const {
  std::vector<std::vector<TightArc>> onward(states_.size());
  std::vector<std::uint32_t> open{goal_};
  std::vector<bool> marked(states_.size(), false);
  marked[goal_] = true;
  while (!open.empty()) {
    const std::uint32_t state = open.back();
    open.pop_back();
    for (std::uint32_t row = states_[state].tight; row != kNoRow; row = tight_arcs_[row].next) {
      const TightArc& arc = tight_arcs_[row];
      onward[arc.from].push_back({state, arc.move, kNoRow});
      if (marked[arc.from]) continue;
      marked[arc.from] = true;
      open.push_back(arc.from);
    }
  }
  return onward;
}

Route Search::first_in_order() const {
  const auto onward = arcs_on_best_chains();
  FirstByIds walk(folded_, graph_.moves(), [&](std::uint32_t state, auto emit) {
    for (const TightArc& arc : onward[state]) emit(arc.move, arc.from);
  });
  return {walk.from(0), states_[goal_].cost};
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
  FirstByIds walk(folded, graph.moves(), [&](std::uint32_t state, auto emit) {
    const bool at_start = state == start;
    const Cost& left = at_start ? best : to_goal[state];
    for (const Arc& arc : at_start ? std::span<const Arc>(first) : graph.arcs(state))
      if (arc.cost + to_goal[arc.to] == left) emit(arc.move, arc.to);
    const auto last = at_start ? direct : graph.last_joint(rules, graph.nodes()[state], request.to);
    if (last && last->cost == left) emit(UINT32_MAX, 0u);
  });
  return Route{walk.from(start), best};
}

bool only_cost_counts(const Rules& rules, const PortGraph& graph, const SearchLimits& limits) {
  return rules.closing() == Closing::none && rules.need_groups().empty() && !limits.most_parts &&
         !limits.most_bushings && !graph.counts_the_bin();
}

}  // namespace

std::optional<Route> search(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                            const std::vector<Cost>& to_goal, const SearchLimits& limits) {
  if (only_cost_counts(rules, graph, limits)) return read_off(folded, rules, graph, to_goal);
  return Search(folded, rules, graph, to_goal, limits).run();
}

}  // namespace riserun::chain
