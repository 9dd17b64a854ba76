#include "chain/tree/steiner_table.h"

#include <algorithm>

namespace riserun::chain {

namespace {

constexpr std::uint64_t kMostCells = std::uint64_t{1} << 26;  // 1 GB of sums
constexpr std::uint64_t kMostNumbers = std::uint64_t{1} << 22;

std::vector<int> digits_of(const BranchEnds& ends, const BranchCounts& counts) {
  std::vector<int> most;
  for (const TargetKind& kind : ends.targets) most.push_back(kind.count);
  for (const Wanted& wanted : counts.wanted) most.push_back(wanted.count);
  most.insert(most.end(), counts.scarce.begin(), counts.scarce.end());
  return most;
}

}  // namespace

SteinerTable::SteinerTable(const Rules& rules, const BranchEnds& ends, const BranchCounts& counts,
                           std::vector<BranchMove> moves)
    : rules_(rules), ends_(ends), moves_(std::move(moves)), tally_(digits_of(ends, counts)) {
  if (tally_.size() > kMostNumbers) MixedRadix<std::uint32_t>::refuse();
  find_alike();
  make_faces();
  make_joints();
  make_moves();
  make_numbers(counts);
  if (std::uint64_t{possible_count_} * item_count_ * 2 > kMostCells) MixedRadix<std::uint32_t>::refuse();
  sums_.assign(std::size_t{possible_count_} * item_count_ * 2, {});
  for (std::uint32_t number = 0; number < tally_.size(); ++number)
    if (possible(number)) fill(number);
}

void SteinerTable::make_numbers(const BranchCounts& counts) {
  const std::size_t kinds = ends_.targets.size();
  for (std::size_t i = 0; i < kinds; ++i)
    needed_ += static_cast<std::uint32_t>(ends_.targets[i].count) * tally_.unit(i);
  for (std::size_t i = 0; i < counts.wanted.size(); ++i)
    needed_ += static_cast<std::uint32_t>(counts.wanted[i].count) * tally_.unit(kinds + i);
  row_of_number_.assign(tally_.size(), UINT32_MAX);
  kinds_of_.assign(tally_.size(), 0);
  unturned_.assign(tally_.size(), UINT32_MAX);
  for (std::uint32_t number = 0; number < tally_.size(); ++number) look_at_number(counts, number);
}

void SteinerTable::look_at_number(const BranchCounts& counts, std::uint32_t number) {
  const std::size_t kinds = ends_.targets.size();
  for (std::size_t i = 0; i < kinds; ++i)
    if (tally_.digit(number, i) > 0) kinds_of_[number] |= 1u << i;
  if (kinds_of_[number] == 0) return;
  std::uint32_t unturned = number;
  bool turned = true;
  for (std::size_t i = 0; i < counts.wanted.size(); ++i) {
    const Wanted& wanted = counts.wanted[i];
    if (!wanted.kind) continue;
    const bool there = kinds_of_[number] >> *wanted.kind & 1u;
    const int gathered = tally_.digit(number, kinds + i);
    if (!there && gathered > 0) return;
    if (wanted.quarter_turn && there) turned = turned && gathered > 0;
    if (wanted.quarter_turn && gathered > 0) unturned -= tally_.unit(kinds + i);
  }
  row_of_number_[number] = possible_count_++;
  if (turned) unturned_[number] = unturned;
}

std::vector<std::uint32_t> SteinerTable::splits_of(std::uint32_t number) const {
  std::vector<std::uint32_t> splits = tally_.parts_of(number);
  std::erase_if(splits, [&](std::uint32_t left) { return !possible(left) || !possible(number - left); });
  return splits;
}

void SteinerTable::find_alike() {
  alike_end_.resize(moves_.size());
  std::uint32_t first = 0;
  for (std::uint32_t row = 1; row <= moves_.size(); ++row) {
    if (row < moves_.size() && same_but_for_rest(moves_[first], moves_[row])) continue;
    std::fill(alike_end_.begin() + first, alike_end_.begin() + row, row);
    first = row;
  }
}

const std::vector<BranchSum>& SteinerTable::weighed(Weighed& known_of, std::uint32_t number, Weigh weigh) const {
  const std::uint32_t kinds = kinds_of_[number];
  const auto [known, is_new] = known_of.try_emplace(kinds);
  if (!is_new) return known->second;
  const Order order = rules_.request().order;
  known->second.assign(faces_.size(), {0, 0});
  if (!keeps_the_line(order)) return known->second;
  const RunEnds ends = ends_beyond(kinds);
  for (std::uint32_t face = 0; face < faces_.size(); ++face) {
    Measures measures;
    weigh(rules_.catalog(), ends, faces_[face].type, measures);
    known->second[face] = packed(order, cost_of(order, measures));
  }
  return known->second;
}

const std::vector<BranchSum>& SteinerTable::passing(std::uint32_t number) const {
  return weighed(passing_, number, add_passing);
}

const std::vector<BranchSum>& SteinerTable::joining(std::uint32_t number) const {
  return weighed(joining_, number, add_inner_joint);
}

// The line size of a port is the greatest that a target beyond asks for.
RunEnds SteinerTable::ends_beyond(std::uint32_t kinds) const {
  RunEnds ends;
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind) {
    if (!(kinds >> kind & 1u)) continue;
    const RunEnds& way = ends_.targets[kind].ends;
    ends.line_inches = std::max(ends.line_inches, way.line_inches);
    ends.kinds.insert(ends.kinds.end(), way.kinds.begin(), way.kinds.end());
    ends.keeps_metals_apart = way.keeps_metals_apart;
    ends.runs_on_hose = way.runs_on_hose;
  }
  return ends;
}

void SteinerTable::make_faces() {
  for (const BranchMove& move : moves_) {
    faces_.push_back(move.enter_face);
    faces_.insert(faces_.end(), move.exits.begin(), move.exits.end());
  }
  std::sort(faces_.begin(), faces_.end());
  faces_.erase(std::unique(faces_.begin(), faces_.end()), faces_.end());
  faces_.push_back(ends_.base);
}

std::uint32_t SteinerTable::face_row(const Face& face) const {
  return static_cast<std::uint32_t>(std::lower_bound(faces_.begin(), faces_.end() - 1, face) - faces_.begin());
}

std::optional<FaceJoint> SteinerTable::joint_between(const Face& a, const Face& b) const {
  const catalog::MatingRule* rule = joint(rules_, a, b);
  if (!rule) return std::nullopt;
  return FaceJoint{0, closes_in_place(*rule, a.bow, b.bow)};
}

void SteinerTable::make_joints() {
  joints_.resize(faces_.size());
  joined_from_.resize(faces_.size());
  for (std::uint32_t from = 0; from < faces_.size(); ++from) {
    for (const catalog::Mate& mate : rules_.catalog().mates(faces_[from].type)) {
      const auto end = faces_.end() - 1;  // nothing is put onto the base's way in
      auto to = std::lower_bound(faces_.begin(), end, Face{mate.other, MaterialId{0}, false});
      for (; to != end && to->type == mate.other; ++to) {
        const auto made = joint_between(faces_[from], *to);
        if (!made) continue;
        const auto row = static_cast<std::uint32_t>(to - faces_.begin());
        joints_[from].push_back({row, made->closing});
        joined_from_[row].push_back({from, made->closing});
      }
    }
  }
}

std::uint32_t SteinerTable::junction_of(const Junction& junction) {
  const auto known = std::find(junctions_.begin(), junctions_.end(), junction);
  const auto row = static_cast<std::uint32_t>(known - junctions_.begin());
  if (known == junctions_.end()) junctions_.push_back(junction);
  return static_cast<std::uint32_t>(faces_.size()) + row;
}

void SteinerTable::make_moves() {
  entering_.resize(faces_.size());
  leaving_.resize(faces_.size());
  for (std::uint32_t row = 0; row < moves_.size(); ++row) {
    const BranchMove& move = moves_[row];
    std::uint32_t tail = face_row(move.exits.front());
    Gate gate = move.gates.front();
    for (std::size_t i = 1; i < move.exits.size(); ++i) {
      tail = junction_of({tail, face_row(move.exits[i]), gate, move.gates[i]});
      gate = {};
    }
    std::uint32_t taken = 0;
    for (const Taking& taking : move.takes)
      taken += static_cast<std::uint32_t>(taking.count) * tally_.unit(taking.digit);
    tails_.push_back(tail);
    gates_.push_back(gate);
    taken_.push_back(taken);
    move_sums_.push_back(packed(rules_.request().order, move.cost));
    entered_face_.push_back(face_row(move.enter_face));
    if (row > 0 && alike_end_[row] == alike_end_[row - 1]) continue;  // goes with the first of its like
    entering_[entered_face_[row]].push_back(row);
    const bool keeps_number = move.exits.size() == 1 && move.takes.empty();
    if (keeps_number) leaving_[tail].push_back(row);
    if (keeps_number && gate.quarter_turn) turning_.push_back(row);
    if (!keeps_number) seeds_.push_back(row);
  }
  for (const TargetKind& kind : ends_.targets) {
    std::vector<BranchSum>& sums = way_sums_.emplace_back();
    for (const TargetWay& way : kind.ways) sums.push_back(packed(rules_.request().order, way.cost));
  }
  item_count_ = faces_.size() + junctions_.size();
}

void SteinerTable::improve(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& beyond) {
  BranchSum& known = sums_[cell(face, number, held)];
  const BranchSum better = beyond + (*passing_now_)[face];
  if (better >= known) return;
  known = better;
  open_.push({better, face, held});
}

// A move entered by that face, with what follows it, costs that much.
void SteinerTable::enter(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& with_move) {
  BranchSum& known = entered_[std::size_t{face} * 2 + (held ? 1 : 0)];
  const BranchSum better = with_move + (*passing_now_)[face];
  if (better >= known) return;
  known = better;
  const BranchSum on_part = better + (*joining_now_)[face];
  for (const FaceJoint& joint : joined_from_[face])
    improve(number, joint.face, held && !joint.closing, joint.face == base_row() ? better : on_part);
}

bool SteinerTable::holds_all_targets(std::uint32_t number) const {
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind)
    if (tally_.digit(number, kind) != ends_.targets[kind].count) return false;
  return true;
}

std::optional<std::uint32_t> SteinerTable::without(std::uint32_t number, std::uint32_t move) const {
  for (const Taking& taking : moves_[move].takes) {
    const int rest = tally_.digit(number, taking.digit) - taking.count;
    if (rest < 0 || (taking.beyond >= 0 && rest != taking.beyond)) return std::nullopt;
    if (taking.before_all && !holds_all_targets(number)) return std::nullopt;
    if (taking.alone_before && kinds_of_[number] != 1u << *taking.alone_before) return std::nullopt;
  }
  return number - taken_[move];
}

void SteinerTable::fill_junctions(std::uint32_t number) {
  for (const std::uint32_t whole_left : splits_of(number)) {
    for (std::uint32_t row = 0; row < junctions_.size(); ++row) {
      const Junction& junction = junctions_[row];
      const auto left = behind(junction.left_gate, whole_left);
      const auto right = behind(junction.right_gate, number - whole_left);
      if (!left || !right) continue;
      const auto item = static_cast<std::uint32_t>(faces_.size()) + row;
      for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
        const BranchSum& first = sum(junction.left, *left, a);
        if (!first.reachable()) continue;
        const BranchSum& second = sum(junction.right, *right, b);
        if (!second.reachable()) continue;
        BranchSum& known = sums_[cell(item, number, a || b)];
        known = std::min(known, first + second);
      }
    }
  }
}

bool SteinerTable::is_end(std::uint32_t number, std::size_t kind, const TargetWay& way) const {
  std::uint32_t alone = tally_.unit(kind);
  for (const Taking& taking : way.takes) alone += static_cast<std::uint32_t>(taking.count) * tally_.unit(taking.digit);
  return number == alone;
}

void SteinerTable::reach_targets(std::uint32_t number) {
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind) {
    const TargetKind& target = ends_.targets[kind];
    for (std::size_t way = 0; way < target.ways.size(); ++way) {
      if (!is_end(number, kind, target.ways[way])) continue;
      for (std::uint32_t face = 0; face < faces_.size(); ++face)
        if (const auto joint = joint_between(faces_[face], target.ways[way].face))
          improve(number, face, target.held && !joint->closing, way_sums_[kind][way]);
    }
  }
}

void SteinerTable::seed(std::uint32_t number, std::uint32_t move) {
  const auto rest = without(number, move);
  const auto beyond = rest ? behind(gates_[move], *rest) : std::nullopt;
  if (!beyond) return;
  for (const bool held : {false, true})
    if (const BranchSum& follows = sum(tails_[move], *beyond, held); follows.reachable())
      enter(number, entered_face_[move], held && !moves_[move].closes, follows + move_sums_[move]);
}

void SteinerTable::fill(std::uint32_t number) {
  fill_junctions(number);
  passing_now_ = &passing(number);
  joining_now_ = &joining(number);
  entered_.assign(faces_.size() * 2, {});
  reach_targets(number);
  for (const std::uint32_t move : seeds_) seed(number, move);
  // A turn leads on to a smaller number where a target beyond looks to a side.
  for (const std::uint32_t move : turning_)
    if (behind(gates_[move], number) != number) seed(number, move);
  while (!open_.empty()) {
    const Open next = open_.top();
    open_.pop();
    if (next.sum != sum(next.face, number, next.held)) continue;
    for (const std::uint32_t move : leaving_[next.face])
      if (behind(gates_[move], number) == number)
        enter(number, entered_face_[move], next.held && !moves_[move].closes, next.sum + move_sums_[move]);
  }
}

}  // namespace riserun::chain
