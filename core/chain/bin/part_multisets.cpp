#include "chain/bin/part_multisets.h"

#include "chain/graph/joint.h"
#include "chain/graph/plugs.h"
#include "chain/search/potentials.h"

#include <algorithm>
#include <deque>
#include <functional>
#include <tuple>

namespace riserun::chain {

namespace {

/// A part of the class on its way through, with the plugs of its other ports.
struct Passage {
  Move move;
  Pieces pieces;
  std::uint32_t leaves_at = 0;  // open end
};

struct Beginning {
  std::uint32_t at = 0;
  Progress progress;
  Pieces pieces;
  int bushings = 0;  // told apart only under a limit
};

/// A bit for each class, some sharing one: a set within another has no bit that the other has not, which tells most
/// pairs apart at once.
std::uint64_t marks_of(const Pieces& pieces) {
  std::uint64_t marks = 0;
  for (const auto& [row, count] : pieces) marks |= std::uint64_t{1} << (row % 64);
  return marks;
}

struct Marked {
  std::uint64_t marks = 0;
  Pieces pieces;
  bool is_within(const Marked& more) const {
    return (marks & ~more.marks) == 0 && chain::is_within(pieces, more.pieces);
  }
};

Pieces sum(const Pieces& a, const Pieces& b) { return merged(a, b, std::plus<>()); }

class PossibleChains {
 public:
  PossibleChains(const Rules& rules, const PartClasses& classes, const std::vector<int>& there, int most_beyond)
      : rules_(rules), catalog_(rules.catalog()), classes_(classes), there_(there), most_beyond_(most_beyond) {}

  std::vector<Pieces> all();

 private:
  void add_passages(std::uint32_t row);
  void add_plugged(Passage passage, std::size_t port);
  std::uint32_t row_of(const OpenEnd& end);
  void measure();
  /// Calls follow(passage, rule) for each passage that may be put onto the open end, by that rule.
  template <class Follow>
  void for_each_onto(const OpenEnd& open, Follow follow) const;
  const catalog::MatingRule* last_joint(const OpenEnd& open) const {
    return joint(rules_, open, open_end_of(rules_.request().to));
  }
  int bought_at_least(const Passage& passage) const;
  void extend(const Beginning& begun);
  void keep(Beginning next);
  bool can_be_had(const Pieces& pieces) const;
  int must_buy(const Pieces& pieces) const { return count_in(beyond(pieces, there_)); }

  const Rules& rules_;
  const Catalog& catalog_;
  const PartClasses& classes_;
  const std::vector<int>& there_;
  int most_beyond_ = 0;
  std::vector<OpenEnd> ends_;
  std::map<OpenEnd, std::uint32_t> end_rows_;
  std::vector<Passage> passages_;
  std::vector<std::vector<std::uint32_t>> entering_;  // passages by port type
  std::vector<std::uint32_t> plugs_;                  // classes with one port
  std::vector<int> to_goal_;                          // pieces to buy at least, by open end
  std::map<std::tuple<std::uint32_t, Progress, int>, std::vector<Marked>> kept_;
  std::deque<Beginning> open_;
  std::vector<Pieces> found_;
};

std::uint32_t PossibleChains::row_of(const OpenEnd& end) {
  const auto [known, is_new] = end_rows_.try_emplace(end, static_cast<std::uint32_t>(ends_.size()));
  if (is_new) ends_.push_back(end);
  return known->second;
}

// Each class once; a class that must be bought has to be on sale.
void PossibleChains::add_passages(std::uint32_t row) {
  const PartId id = classes_.cheapest(row);
  if (!rules_.admits(id) || (there_[row] == 0 && !rules_.buyable(id))) return;
  const catalog::Part& part = catalog_.part(id);
  const std::uint8_t groups = rules_.groups_of(id);
  if (groups == 0 && !goes_in_unasked(catalog_, rules_.request(), part)) return;
  for (std::size_t enter = 0; enter < part.ports.size(); ++enter) {
    for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
      if (enter == leave || !rules_.admits_way(part, enter, leave)) continue;
      Passage passage{bought_move(catalog_, rules_.request(), id, enter, leave), {{row, 1}}, 0};
      passage.move.groups = groups;
      const bool metals = rules_.request().galvanic == Galvanic::avoid;
      passage.leaves_at = row_of({passage.move.leave_type, metals ? passage.move.leave_material : MaterialId{},
                                  passage.move.no_grip, passage.move.bow});
      add_plugged(std::move(passage), 0);
    }
  }
}

void PossibleChains::add_plugged(Passage passage, std::size_t port) {
  const catalog::Part& host = catalog_.part(passage.move.part);
  while (port < host.ports.size() && (port == passage.move.enter || port == passage.move.leave)) ++port;
  if (port >= host.ports.size()) {
    entering_[passage.move.enter_type.row].push_back(static_cast<std::uint32_t>(passages_.size()));
    passages_.push_back(std::move(passage));
    return;
  }
  for (const std::uint32_t plug : plugs_) {
    if (!plugs(rules_, classes_.cheapest(plug), host.ports[port].type, host.material_at(port))) continue;
    Passage next = passage;
    next.pieces = sum(next.pieces, {{plug, 1}});
    add_plugged(std::move(next), port + 1);
  }
}

template <class Follow>
void PossibleChains::for_each_onto(const OpenEnd& open, Follow follow) const {
  for (const catalog::Mate& mate : catalog_.mates(open.type)) {
    const catalog::MatingRule& rule = catalog_.mating_rules()[mate.rule];
    for (const std::uint32_t row : entering_[mate.other.row]) {
      const Move& move = passages_[row].move;
      if (may_join(rules_, open, {move.enter_type, move.enter_material, move.no_grip}, rule))
        follow(passages_[row], rule);
    }
  }
}

// What is at hand is taken to be without end here: a bound.
int PossibleChains::bought_at_least(const Passage& passage) const {
  int bought = 0;
  for (const auto& [row, count] : passage.pieces) bought += there_[row] == 0 ? count : 0;
  return bought;
}

void PossibleChains::measure() {
  const RowGraph<StepEdge> back(static_cast<std::uint32_t>(ends_.size()), [&](auto emit) {
    for (std::uint32_t end = 0; end < ends_.size(); ++end)
      for_each_onto(ends_[end], [&](const Passage& passage, const catalog::MatingRule&) {
        emit(passage.leaves_at, StepEdge{end, bought_at_least(passage)});
      });
  });
  std::vector<std::uint32_t> last;
  for (std::uint32_t end = 0; end < ends_.size(); ++end)
    if (last_joint(ends_[end]) != nullptr) last.push_back(end);
  to_goal_ = fewest_steps(back, last);
}

bool PossibleChains::can_be_had(const Pieces& pieces) const {
  return std::all_of(pieces.begin(), pieces.end(), [&](const auto& piece) {
    return piece.second <= there_[piece.first] || rules_.buyable(classes_.cheapest(piece.first));
  });
}

void PossibleChains::keep(Beginning next) {
  if (to_goal_[next.at] >= kNoWay || must_buy(next.pieces) + to_goal_[next.at] > most_beyond_) return;
  std::vector<Marked>& there = kept_[{next.at, next.progress, next.bushings}];
  Marked marked{marks_of(next.pieces), next.pieces};
  for (const Marked& other : there)
    if (other.is_within(marked)) return;
  std::erase_if(there, [&](const Marked& other) { return marked.is_within(other); });
  there.push_back(std::move(marked));
  open_.push_back(std::move(next));
}

void PossibleChains::extend(const Beginning& begun) {
  const OpenEnd& open = ends_[begun.at];
  const catalog::MatingRule* last = last_joint(open);
  if (last != nullptr && rules_.satisfied(begun.progress.met) &&
      (begun.progress.closed || rules_.joint_closes(*last, open.bow, Bow::none)))
    found_.push_back(begun.pieces);
  for_each_onto(open, [&](const Passage& passage, const catalog::MatingRule& rule) {
    const Move& move = passage.move;
    if (to_goal_[passage.leaves_at] > most_beyond_) return;
    const std::optional<Progress> progress =
        after(rules_, begun.progress,
              {move.groups, move.only_for_need, move.closes || rules_.joint_closes(rule, open.bow, move.bow)});
    if (!progress) return;
    Beginning next{passage.leaves_at, *progress, sum(begun.pieces, passage.pieces), begun.bushings};
    if (!can_be_had(next.pieces)) return;
    const std::optional<int>& most_bushings = rules_.request().most_bushings;
    if (most_bushings && move.bushing && ++next.bushings > *most_bushings) return;
    if (rules_.request().most_parts && count_in(next.pieces) > *rules_.request().most_parts) return;
    keep(std::move(next));
  });
}

std::vector<Pieces> PossibleChains::all() {
  entering_.resize(catalog_.port_types().size());
  for (std::uint32_t row = 0; row < classes_.count(); ++row) {
    const PartId id = classes_.cheapest(row);
    if (is_plug(rules_, id) && (there_[row] > 0 || rules_.buyable(id))) plugs_.push_back(row);
  }
  const std::uint32_t start = row_of(open_end_of(rules_.request().from));
  for (std::uint32_t row = 0; row < classes_.count(); ++row) add_passages(row);
  measure();
  keep({start, at_the_start(rules_), {}});
  while (!open_.empty()) {
    const Beginning begun = std::move(open_.front());
    open_.pop_front();
    const std::vector<Marked>& there = kept_[{begun.at, begun.progress, begun.bushings}];
    const auto is_begun = [&, marks = marks_of(begun.pieces)](const Marked& kept) {
      return kept.marks == marks && kept.pieces == begun.pieces;
    };
    if (std::any_of(there.begin(), there.end(), is_begun)) extend(begun);
  }
  return std::move(found_);
}

}  // namespace

bool is_within(const Pieces& less, const Pieces& more) {
  auto at = more.begin();
  for (const auto& [row, count] : less) {
    while (at != more.end() && at->first < row) ++at;
    if (at == more.end() || at->first != row || at->second < count) return false;
  }
  return true;
}

int count_in(const Pieces& pieces) {
  int all = 0;
  for (const auto& [row, count] : pieces) all += count;
  return all;
}

Pieces beyond(const Pieces& pieces, const std::vector<int>& counts) {
  Pieces rest;
  for (const auto& [row, count] : pieces)
    if (count > counts[row]) rest.emplace_back(row, count - counts[row]);
  return rest;
}

std::vector<Pieces> part_multisets(const Rules& rules, const PartClasses& classes, const std::vector<int>& there,
                                   int most_beyond) {
  return PossibleChains(rules, classes, there, most_beyond).all();
}

}  // namespace riserun::chain
