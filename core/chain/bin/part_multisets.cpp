#include "chain/bin/part_multisets.h"

#include <algorithm>
#include <deque>
#include <limits>
#include <tuple>

namespace riserun::chain {

namespace {

constexpr int kNever = std::numeric_limits<int>::max() / 2;

/// An open end that a chain can be left at.
struct OpenEnd {
  PortTypeId type;
  MaterialId material;
  bool no_grip = false;
  auto operator<=>(const OpenEnd&) const = default;
};

/// A part of the class on its way through, with the plugs of its other ports.
struct Passage {
  Move move;
  Pieces pieces;
  std::uint32_t leaves_at = 0;  // open end
};

struct Beginning {
  std::uint32_t at = 0;
  bool closed = false;
  std::uint8_t met = 0;
  Pieces pieces;
  int bushings = 0;  // told apart only under a limit
};

Pieces sum(const Pieces& a, const Pieces& b) {
  Pieces all = a;
  for (const auto& [row, count] : b) {
    const auto at = std::lower_bound(all.begin(), all.end(), std::pair(row, 0));
    if (at != all.end() && at->first == row)
      at->second += count;
    else
      all.insert(at, {row, count});
  }
  return all;
}

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
  bool joins(const OpenEnd& open, const Move& move, const catalog::MatingRule& rule) const;
  const catalog::MatingRule* last_joint(const OpenEnd& open) const;
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
  std::map<std::tuple<std::uint32_t, bool, std::uint8_t, int>, std::vector<Pieces>> kept_;
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
  if (groups == 0 && !is_plain_connector(catalog_, part)) return;
  for (std::size_t enter = 0; enter < part.ports.size(); ++enter) {
    for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
      if (enter == leave || !rules_.admits_way(part, enter, leave)) continue;
      Passage passage{bought_move(catalog_, id, enter, leave), {{row, 1}}, 0};
      passage.move.groups = groups;
      const bool metals = rules_.request().galvanic == Galvanic::avoid;
      passage.leaves_at =
          row_of({passage.move.leave_type, metals ? passage.move.leave_material : MaterialId{}, passage.move.no_grip});
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
    const catalog::Part& part = catalog_.part(classes_.cheapest(plug));
    if (catalog_.mating_rule(host.ports[port].type, part.ports[0].type) == nullptr) continue;
    if (!rules_.may_meet(part.material, host.material_at(port))) continue;
    Passage next = passage;
    next.pieces = sum(next.pieces, {{plug, 1}});
    add_plugged(std::move(next), port + 1);
  }
}

bool PossibleChains::joins(const OpenEnd& open, const Move& move, const catalog::MatingRule& rule) const {
  if (!rules_.may_meet(open.material, move.enter_material)) return false;
  return !((open.no_grip || move.no_grip) && rule.turning == catalog::Turning::neither);
}

const catalog::MatingRule* PossibleChains::last_joint(const OpenEnd& open) const {
  const PortEnd& goal = rules_.request().to;
  const catalog::MatingRule* rule = catalog_.mating_rule(open.type, goal.type);
  if (rule == nullptr || !rules_.may_meet(open.material, goal.material.value_or(MaterialId{}))) return nullptr;
  return open.no_grip && rule->turning == catalog::Turning::neither ? nullptr : rule;
}

// What is at hand is taken to be without end here: a bound.
void PossibleChains::measure() {
  to_goal_.assign(ends_.size(), kNever);
  for (std::uint32_t end = 0; end < ends_.size(); ++end)
    if (last_joint(ends_[end]) != nullptr) to_goal_[end] = 0;
  std::vector<int> own;
  for (const Passage& passage : passages_) {
    int bought = 0;
    for (const auto& [row, count] : passage.pieces) bought += there_[row] == 0 ? count : 0;
    own.push_back(bought);
  }
  for (bool better = true; better;) {
    better = false;
    for (std::uint32_t end = 0; end < ends_.size(); ++end) {
      for (const catalog::Mate& mate : catalog_.mates(ends_[end].type)) {
        for (const std::uint32_t row : entering_[mate.other.row]) {
          const Passage& passage = passages_[row];
          const int through = own[row] + to_goal_[passage.leaves_at];
          if (through >= to_goal_[end]) continue;
          if (!joins(ends_[end], passage.move, catalog_.mating_rules()[mate.rule])) continue;
          to_goal_[end] = through;
          better = true;
        }
      }
    }
  }
}

bool PossibleChains::can_be_had(const Pieces& pieces) const {
  return std::all_of(pieces.begin(), pieces.end(), [&](const auto& piece) {
    return piece.second <= there_[piece.first] || rules_.buyable(classes_.cheapest(piece.first));
  });
}

void PossibleChains::keep(Beginning next) {
  if (to_goal_[next.at] >= kNever || must_buy(next.pieces) + to_goal_[next.at] > most_beyond_) return;
  std::vector<Pieces>& there = kept_[{next.at, next.closed, next.met, next.bushings}];
  for (const Pieces& other : there)
    if (is_within(other, next.pieces)) return;
  std::erase_if(there, [&](const Pieces& other) { return is_within(next.pieces, other); });
  there.push_back(next.pieces);
  open_.push_back(std::move(next));
}

void PossibleChains::extend(const Beginning& begun) {
  const OpenEnd& open = ends_[begun.at];
  const catalog::MatingRule* last = last_joint(open);
  if (last != nullptr && rules_.satisfied(begun.met) && (begun.closed || rules_.joint_closes(*last)))
    found_.push_back(begun.pieces);
  for (const catalog::Mate& mate : catalog_.mates(open.type)) {
    const catalog::MatingRule& rule = catalog_.mating_rules()[mate.rule];
    for (const std::uint32_t row : entering_[mate.other.row]) {
      const Passage& passage = passages_[row];
      if (to_goal_[passage.leaves_at] > most_beyond_ || !joins(open, passage.move, rule)) continue;
      const std::uint8_t met = rules_.advance(begun.met, passage.move.groups);
      if (passage.move.only_for_need && met == begun.met) continue;
      Beginning next{passage.leaves_at, begun.closed || passage.move.closes || rules_.joint_closes(rule), met,
                     sum(begun.pieces, passage.pieces), begun.bushings};
      if (!can_be_had(next.pieces)) continue;
      const std::optional<int>& most_bushings = rules_.request().most_bushings;
      if (most_bushings && passage.move.bushing && ++next.bushings > *most_bushings) continue;
      if (rules_.request().most_parts && count_in(next.pieces) > *rules_.request().most_parts) continue;
      keep(std::move(next));
    }
  }
}

std::vector<Pieces> PossibleChains::all() {
  entering_.resize(catalog_.port_types().size());
  for (std::uint32_t row = 0; row < classes_.count(); ++row) {
    const PartId id = classes_.cheapest(row);
    const catalog::Part& part = catalog_.part(id);
    const bool closes = part.ports.size() == 1 && catalog_.family(part.family).role == catalog::Role::connector;
    if (closes && rules_.admits(id) && (there_[row] > 0 || rules_.buyable(id))) plugs_.push_back(row);
  }
  const PortEnd& from = rules_.request().from;
  const std::uint32_t start = row_of({from.type, from.material.value_or(MaterialId{}), false});
  for (std::uint32_t row = 0; row < classes_.count(); ++row) add_passages(row);
  measure();
  keep({start, rules_.closing() == Closing::none, 0, {}});
  while (!open_.empty()) {
    const Beginning begun = std::move(open_.front());
    open_.pop_front();
    const std::vector<Pieces>& there = kept_[{begun.at, begun.closed, begun.met, begun.bushings}];
    if (std::find(there.begin(), there.end(), begun.pieces) != there.end()) extend(begun);
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
