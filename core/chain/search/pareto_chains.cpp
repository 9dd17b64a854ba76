#include "chain/search/pareto_chains.h"

#include "chain/search/potentials.h"
#include "chain/search/state_space.h"
#include "chain/search/tie_key.h"

#include <algorithm>
#include <unordered_map>

namespace riserun::chain {

namespace {

/// The beginning of a chain.
struct Label {
  Cost measures;
  std::int64_t drawbacks = 0;
  std::uint32_t state = 0;      // row of the states
  std::uint32_t move = kNoRow;  // the last one; kNoRow: the start, or the last joint
  std::uint32_t before = kNoRow;
  bool dominated = false;
  std::uint32_t next_waiting = kNoRow;
};

/// A beginning that nothing beats so far, with its measures at hand: they are compared far more often than the rest.
struct Undominated {
  Cost measures;
  std::uint32_t label = kNoRow;
  std::uint32_t next = kNoRow;  // of the same state
};

/// Beginnings are taken up by the parts that they come to at least, then by the parts that they have. An arc adds a
/// part and never lowers the first, so that all beginnings at a place with as many parts are known before any is taken
/// up: what is taken up stands.
class ParetoSearch {
 public:
  ParetoSearch(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
               const std::vector<Cost>& to_goal, int margin, std::optional<int> most_bushings)
      : folded_(folded),
        rules_(rules),
        graph_(graph),
        potentials_(graph, rules, to_goal),
        space_(rules, graph, {{}, most_bushings}),
        margin_(margin) {}

  std::vector<Route> run();

 private:
  void take_up(std::uint32_t label);
  void follow(const Label& from, std::uint32_t row, const Arc& arc);
  void finish(const Label& from, std::uint32_t row);
  std::uint32_t row_of(const SearchState& state);
  /// The least of each measure by itself that is still to come.
  const Cost& potential(const SearchState& state) { return potentials_.from(state.node, state.progress); }
  void add(const Label& label);
  void add_found(const Label& label);
  bool stands_against(const Undominated& known, const Label& label) const;
  bool loses_tie(const Label& a, const Label& b) const;
  bool hopeless(const Cost& at_least);
  void wait(std::uint32_t row, std::int64_t parts_at_least);
  std::vector<std::uint32_t> moves_to(const Label& label) const;

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const PortGraph& graph_;
  Potentials potentials_;
  const StateSpace space_;
  int margin_ = 0;
  std::int64_t most_parts_ = INT32_MAX;  // tightened when the first chain is found
  std::vector<Label> labels_;
  std::vector<SearchState> states_;
  std::vector<Undominated> standing_;          // all states' lists in one
  std::vector<std::uint32_t> first_standing_;  // by state; kNoRow: an empty list
  std::vector<Undominated> found_;             // of the goal's state
  std::vector<std::uint32_t> plain_rows_;      // states with nothing met, spent or counted, by node and closed
  std::unordered_map<SearchState, std::uint32_t, SearchStateHash> other_rows_;
  // By parts at least, then by parts: first of a list through the labels.
  std::vector<std::vector<std::uint32_t>> waiting_;
  std::uint32_t goal_ = 0;  // row of the goal's state
};

std::vector<Route> ParetoSearch::run() {
  if (rules_.request().most_parts) most_parts_ = *rules_.request().most_parts;
  plain_rows_.assign(std::size_t{space_.node_count()} * 2, kNoRow);
  goal_ = row_of(space_.goal());
  Label start;
  start.state = row_of(space_.start());
  labels_.push_back(start);
  wait(0, 0);
  for (std::size_t at_least = 0; at_least < waiting_.size(); ++at_least) {
    if (static_cast<std::int64_t>(at_least) > most_parts_) break;
    for (std::size_t parts = 0; parts < waiting_[at_least].size(); ++parts)
      for (std::uint32_t row = waiting_[at_least][parts]; row != kNoRow; row = labels_[row].next_waiting) take_up(row);
  }
  std::vector<Route> routes;
  for (const Undominated& found : found_) {
    Route& route = routes.emplace_back();
    for (const std::uint32_t move : moves_to(labels_[found.label])) route.moves.push_back(graph_.moves()[move]);
    route.cost = found.measures;
  }
  return routes;
}

void ParetoSearch::take_up(std::uint32_t row) {
  const Label label = labels_[row];
  if (label.dominated) return;
  const SearchState state = states_[label.state];
  if (!space_.is_start(state) && hopeless(label.measures + potential(state))) return;
  finish(label, row);
  for (const Arc& arc : space_.arcs(state)) follow(label, row, arc);
}

void ParetoSearch::follow(const Label& from, std::uint32_t row, const Arc& arc) {
  const std::optional<SearchState> state = space_.after(states_[from.state], arc);
  if (!state) return;
  const Cost& to_come = potential(*state);
  if (to_come.tuple[0] == kFar) return;
  const Cost measures = from.measures + arc.cost;
  const Cost at_least = measures + to_come;
  if (at_least.tuple[0] > most_parts_ || hopeless(at_least)) return;
  add({measures, from.drawbacks + graph_.moves()[arc.move].own.drawbacks, row_of(*state), arc.move, row, false});
}

void ParetoSearch::finish(const Label& from, std::uint32_t row) {
  const std::optional<LastJoint> last = space_.last_joint(states_[from.state]);
  if (!last) return;
  const std::int64_t parts = from.measures.tuple[0];
  if (found_.empty()) most_parts_ = std::min(most_parts_, parts + margin_);
  add({from.measures + last->cost, from.drawbacks, goal_, kNoRow, row, false});
}

std::uint32_t ParetoSearch::row_of(const SearchState& state) {
  const auto next = static_cast<std::uint32_t>(states_.size());
  const bool plain = state.progress.met == 0 && state.spent == 0 && state.bushings == 0;
  std::uint32_t& row = plain ? plain_rows_[state.node * 2 + (state.progress.closed ? 1 : 0)]
                             : other_rows_.try_emplace(state, kNoRow).first->second;
  if (row != kNoRow) return row;
  states_.push_back(state);
  first_standing_.push_back(kNoRow);
  return row = next;
}

// A chain that is found already is as good in every measure and better in one, whatever is yet to come. The one that
// says so is looked at first the next time: neighbours are hopeless for the same reason.
bool ParetoSearch::hopeless(const Cost& at_least) {
  const auto better = std::find_if(found_.begin(), found_.end(), [&](const Undominated& chain) {
    return no_worse(chain.measures, at_least) && chain.measures != at_least;
  });
  if (better == found_.end()) return false;
  if (better != found_.begin()) std::iter_swap(found_.begin(), better);
  return true;
}

void ParetoSearch::add(const Label& label) {
  if (label.state == goal_) return add_found(label);
  std::uint32_t& first = first_standing_[label.state];
  for (std::uint32_t row = first; row != kNoRow; row = standing_[row].next)
    if (stands_against(standing_[row], label)) return;
  // What is left with the same measures has lost the tie.
  for (std::uint32_t* link = &first; *link != kNoRow;) {
    const Undominated& known = standing_[*link];
    if (no_worse(label.measures, known.measures)) {
      labels_[known.label].dominated = true;
      *link = known.next;
    } else {
      link = &standing_[*link].next;
    }
  }
  const auto row = static_cast<std::uint32_t>(labels_.size());
  standing_.push_back({label.measures, row, first});
  first = static_cast<std::uint32_t>(standing_.size() - 1);
  labels_.push_back(label);
  wait(row, label.measures.tuple[0] + potential(states_[label.state]).tuple[0]);
}

void ParetoSearch::add_found(const Label& label) {
  for (const Undominated& known : found_)
    if (stands_against(known, label)) return;
  std::erase_if(found_, [&](const Undominated& known) { return no_worse(label.measures, known.measures); });
  found_.push_back({label.measures, static_cast<std::uint32_t>(labels_.size()), kNoRow});
  labels_.push_back(label);
}

bool ParetoSearch::stands_against(const Undominated& known, const Label& label) const {
  return no_worse(known.measures, label.measures) &&
         (known.measures != label.measures || !loses_tie(labels_[known.label], label));
}

// Both have the same measures. False also where they are the same chain.
bool ParetoSearch::loses_tie(const Label& a, const Label& b) const {
  if (a.drawbacks != b.drawbacks) return a.drawbacks > b.drawbacks;
  const auto key = [&](const Label& label) {
    TieKey made;
    for (const std::uint32_t row : moves_to(label)) made.add(folded_, graph_.moves()[row]);
    return made;
  };
  return key(a) > key(b);
}

void ParetoSearch::wait(std::uint32_t row, std::int64_t parts_at_least) {
  const auto at_least = static_cast<std::size_t>(parts_at_least);
  const auto parts = static_cast<std::size_t>(labels_[row].measures.tuple[0]);
  if (waiting_.size() <= at_least) waiting_.resize(at_least + 1);
  if (waiting_[at_least].size() <= parts) waiting_[at_least].resize(parts + 1, kNoRow);
  labels_[row].next_waiting = waiting_[at_least][parts];
  waiting_[at_least][parts] = row;
}

std::vector<std::uint32_t> ParetoSearch::moves_to(const Label& label) const {
  std::vector<std::uint32_t> moves;
  for (const Label* at = &label;; at = &labels_[at->before]) {
    if (at->move != kNoRow) moves.push_back(at->move);
    if (at->before == kNoRow) break;
  }
  std::reverse(moves.begin(), moves.end());
  return moves;
}

}  // namespace

std::vector<Route> pareto_chains(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                 const std::vector<Cost>& to_goal, int margin, std::optional<int> most_bushings) {
  return ParetoSearch(folded, rules, graph, to_goal, margin, most_bushings).run();
}

}  // namespace riserun::chain
