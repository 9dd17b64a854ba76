#include "chain/branch_table.h"

#include "quantity/input_error.h"

#include <algorithm>

namespace riserun::chain {

namespace {

constexpr std::uint64_t kMostCells = std::uint64_t{1} << 26;  // 1 GB of sums

BranchSum packed(Order order, const Cost& cost) {
  const auto at = [&](std::size_t i) { return static_cast<std::uint64_t>(cost.tuple[i]); };
  if (order == Order::price) return {at(1), at(2) << 32 | at(3)};
  return {at(1) << 44 | at(2), at(3) << 32 | at(4)};
}

std::vector<int> digits_of(const BranchEnds& ends, const BranchCounts& counts) {
  std::vector<int> most;
  for (const TargetKind& kind : ends.targets) most.push_back(kind.count);
  most.insert(most.end(), counts.needs.begin(), counts.needs.end());
  most.insert(most.end(), counts.bin.begin(), counts.bin.end());
  return most;
}

}  // namespace

BranchTable::BranchTable(const Rules& rules, const BranchEnds& ends, const BranchCounts& counts,
                         std::vector<BranchMove> moves)
    : rules_(rules), ends_(ends), moves_(std::move(moves)), tally_(digits_of(ends, counts)) {
  make_faces();
  make_joints();
  make_moves();
  make_needed(counts);
  if (tally_.size() * item_count_ * 2 > kMostCells)
    throw quantity::InputError({{"", 0, 0,
                                 "too many targets, needs and scarce parts of the bin to tell apart: leave out some "
                                 "needs, or bin parts that there are too few of",
                                 ""}});
  sums_.assign(tally_.size() * item_count_ * 2, {});
  for (std::uint32_t number = 0; number < tally_.size(); ++number) fill(number);
}

void BranchTable::make_needed(const BranchCounts& counts) {
  for (std::size_t i = 0; i < ends_.targets.size(); ++i) {
    needed_ += static_cast<std::uint32_t>(ends_.targets[i].count) * tally_.unit(i);
    first_other_digit_ *= static_cast<std::uint32_t>(ends_.targets[i].count) + 1;
  }
  for (std::size_t i = 0; i < counts.needs.size(); ++i)
    needed_ += static_cast<std::uint32_t>(counts.needs[i]) * tally_.unit(ends_.targets.size() + i);
}

void BranchTable::make_faces() {
  faces_.push_back(ends_.base);
  for (const BranchMove& move : moves_) {
    faces_.push_back(move.enter_face);
    faces_.insert(faces_.end(), move.exits.begin(), move.exits.end());
  }
  std::sort(faces_.begin(), faces_.end());
  faces_.erase(std::unique(faces_.begin(), faces_.end()), faces_.end());
}

std::uint32_t BranchTable::face_row(const Face& face) const {
  return static_cast<std::uint32_t>(std::lower_bound(faces_.begin(), faces_.end(), face) - faces_.begin());
}

std::optional<FaceJoint> BranchTable::joint_between(const Face& a, const Face& b) const {
  const catalog::MatingRule* rule = rules_.catalog().mating_rule(a.type, b.type);
  if (!rule || !rules_.may_meet(a.material, b.material)) return std::nullopt;
  return FaceJoint{0, rule->closing};
}

void BranchTable::make_joints() {
  joints_.resize(faces_.size());
  joined_from_.resize(faces_.size());
  for (std::uint32_t from = 0; from < faces_.size(); ++from) {
    for (const catalog::Mate& mate : rules_.catalog().mates(faces_[from].type)) {
      auto to = std::lower_bound(faces_.begin(), faces_.end(), Face{mate.other, MaterialId{0}});
      for (; to != faces_.end() && to->type == mate.other; ++to) {
        auto joint = joint_between(faces_[from], *to);
        if (!joint) continue;
        const auto row = static_cast<std::uint32_t>(to - faces_.begin());
        joints_[from].push_back({row, joint->closing});
        joined_from_[row].push_back({from, joint->closing});
      }
    }
  }
}

std::uint32_t BranchTable::junction_of(std::uint32_t left, std::uint32_t right) {
  const auto known = std::find(junctions_.begin(), junctions_.end(), Junction{left, right});
  const auto row = static_cast<std::uint32_t>(known - junctions_.begin());
  if (known == junctions_.end()) junctions_.push_back({left, right});
  return static_cast<std::uint32_t>(faces_.size()) + row;
}

void BranchTable::make_moves() {
  entering_.resize(faces_.size());
  leaving_.resize(faces_.size());
  for (std::uint32_t row = 0; row < moves_.size(); ++row) {
    const BranchMove& move = moves_[row];
    std::uint32_t tail = face_row(move.exits.front());
    for (std::size_t i = 1; i < move.exits.size(); ++i) tail = junction_of(tail, face_row(move.exits[i]));
    std::uint32_t taken = 0;
    for (const Taking& taking : move.takes)
      taken += static_cast<std::uint32_t>(taking.count) * tally_.unit(taking.digit);
    tails_.push_back(tail);
    taken_.push_back(taken);
    move_sums_.push_back(packed(rules_.request().order, move.cost));
    entered_face_.push_back(face_row(move.enter_face));
    entering_[entered_face_[row]].push_back(row);
    if (move.exits.size() == 1 && move.takes.empty())
      leaving_[tail].push_back(row);
    else
      seeds_.push_back(row);
  }
  item_count_ = faces_.size() + junctions_.size();
}

void BranchTable::improve(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& better) {
  BranchSum& known = sums_[cell(face, number, held)];
  if (better >= known) return;
  known = better;
  open_.push({better, face, held});
}

// A move entered by that face, with what follows it, costs that much.
void BranchTable::enter(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& better) {
  BranchSum& known = entered_[std::size_t{face} * 2 + (held ? 1 : 0)];
  if (better >= known) return;
  known = better;
  for (const FaceJoint& joint : joined_from_[face]) improve(number, joint.face, held && !joint.closing, better);
}

std::optional<std::uint32_t> BranchTable::without(std::uint32_t number, std::uint32_t move) const {
  for (const Taking& taking : moves_[move].takes)
    if (tally_.digit(number, taking.digit) < taking.count) return std::nullopt;
  return number - taken_[move];
}

void BranchTable::fill_junctions(std::uint32_t number) {
  for (const std::uint32_t left : tally_.parts_of(number)) {
    const std::uint32_t right = number - left;
    if (!has_target(left) || !has_target(right)) continue;
    for (std::uint32_t row = 0; row < junctions_.size(); ++row) {
      const auto item = static_cast<std::uint32_t>(faces_.size()) + row;
      for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
        const BranchSum& first = sum(junctions_[row].left, left, a);
        if (!first.reachable()) continue;
        const BranchSum& second = sum(junctions_[row].right, right, b);
        if (!second.reachable()) continue;
        BranchSum& known = sums_[cell(item, number, a || b)];
        known = std::min(known, first + second);
      }
    }
  }
}

void BranchTable::reach_targets(std::uint32_t number) {
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind) {
    const TargetKind& target = ends_.targets[kind];
    if (number != tally_.unit(kind)) continue;
    for (std::uint32_t face = 0; face < faces_.size(); ++face)
      if (const auto joint = joint_between(faces_[face], target.face))
        improve(number, face, target.held && !joint->closing, {0, 0});
  }
}

void BranchTable::fill(std::uint32_t number) {
  if (!has_target(number)) return;
  fill_junctions(number);
  entered_.assign(faces_.size() * 2, {});
  reach_targets(number);
  for (const std::uint32_t move : seeds_) {
    const auto rest = without(number, move);
    if (!rest) continue;
    for (const bool held : {false, true})
      if (const BranchSum& follows = sum(tails_[move], *rest, held); follows.reachable())
        enter(number, entered_face_[move], held && !moves_[move].closes, follows + move_sums_[move]);
  }
  while (!open_.empty()) {
    const Open next = open_.top();
    open_.pop();
    if (next.sum != sum(next.face, number, next.held)) continue;
    for (const std::uint32_t move : leaving_[next.face])
      enter(number, entered_face_[move], next.held && !moves_[move].closes, next.sum + move_sums_[move]);
  }
}

}  // namespace riserun::chain
