#include "chain/branch_search.h"

#include "chain/tally.h"
#include "quantity/input_error.h"

#include <algorithm>
#include <limits>
#include <queue>
#include <unordered_map>

namespace riserun::chain {

namespace {

constexpr std::uint64_t kMostCells = std::uint64_t{1} << 26;  // 1 GB of sums

/// A Cost in two words; sums of dollars up to ten billions, of parts up to a million.
struct Sum {
  std::uint64_t first = std::numeric_limits<std::uint64_t>::max();
  std::uint64_t second = 0;
  auto operator<=>(const Sum&) const = default;
  bool reachable() const { return first != std::numeric_limits<std::uint64_t>::max(); }
  friend Sum operator+(Sum a, const Sum& b) { return {a.first + b.first, a.second + b.second}; }
};

Sum packed(Order order, const Cost& cost) {
  const auto at = [&](std::size_t i) { return static_cast<std::uint64_t>(cost.tuple[i]); };
  if (order == Order::price) return {at(1), at(2) << 32 | at(3)};
  return {at(1) << 44 | at(2), at(3) << 32 | at(4)};
}

/// What can be asked to lead to a set of targets: an open end, or several side by side that share the set.
struct Junction {
  std::uint32_t left = 0;
  std::uint32_t right = 0;
  auto operator<=>(const Junction&) const = default;
};

struct Joint {
  std::uint32_t face = 0;
  bool closing = false;
};

/// A tree, and the same as tokens that sort as AssemblyRequest states.
struct WrittenTree {
  std::vector<std::uint32_t> tokens;
  BranchTree tree;
};

/// The first of all best ways to lead on from an open end (one tree) or from a junction (one for each of its ends).
using Written = std::vector<WrittenTree>;

bool sorts_before(const Written& a, const Written& b) {
  std::vector<std::uint32_t> first;
  std::vector<std::uint32_t> second;
  for (const WrittenTree& tree : a) first.insert(first.end(), tree.tokens.begin(), tree.tokens.end());
  for (const WrittenTree& tree : b) second.insert(second.end(), tree.tokens.begin(), tree.tokens.end());
  return first < second;
}

class BranchSearch {
 public:
  BranchSearch(const Network& network, const Rules& rules, const BranchEnds& ends, const BranchCounts& counts,
               std::vector<BranchMove> moves)
      : network_(network),
        rules_(rules),
        ends_(ends),
        counts_(counts),
        moves_(std::move(moves)),
        tally_(digits(ends, counts)) {}

  std::optional<BranchTree> run();

 private:
  static std::vector<int> digits(const BranchEnds& ends, const BranchCounts& counts);
  void make_faces();
  void make_joints();
  void make_moves();
  std::uint32_t face_row(const Face& face) const;
  std::uint32_t junction_of(std::uint32_t left, std::uint32_t right);
  std::optional<Joint> joint_between(const Face& a, const Face& b) const;

  void fill(std::uint32_t number);
  void fill_junctions(std::uint32_t number);
  void improve(std::uint32_t number, std::uint32_t face, bool held, const Sum& sum);
  void enter(std::uint32_t number, std::uint32_t face, bool held, const Sum& sum);
  std::optional<std::uint32_t> without(std::uint32_t number, std::uint32_t move) const;
  bool has_target(std::uint32_t number) const { return number % first_other_digit_ != 0; }

  const Written& written(std::uint32_t item, std::uint32_t number, bool held);
  Written write_face(std::uint32_t face, std::uint32_t number, bool held);
  Written write_junction(std::uint32_t item, std::uint32_t number, bool held);
  std::optional<WrittenTree> write_target(std::uint32_t face, std::uint32_t number, bool held) const;
  WrittenTree write_move(std::uint32_t move, const Written& follows) const;

  std::size_t cell(std::uint32_t item, std::uint32_t number, bool held) const {
    return (std::size_t{number} * 2 + (held ? 1 : 0)) * item_count_ + item;
  }
  Sum& sum(std::uint32_t item, std::uint32_t number, bool held) { return sums_[cell(item, number, held)]; }

  const Network& network_;
  const Rules& rules_;
  const BranchEnds& ends_;
  const BranchCounts& counts_;
  std::vector<BranchMove> moves_;
  Tally tally_;
  std::uint32_t first_other_digit_ = 1;  // weight of the first digit that is no target's

  std::vector<Face> faces_;  // sorted; items are faces, then junctions
  std::vector<Junction> junctions_;
  std::vector<std::vector<Joint>> joints_;            // by face that leads on: the faces that can be entered
  std::vector<std::vector<Joint>> joined_from_;       // by face that is entered
  std::vector<std::vector<std::uint32_t>> entering_;  // moves by entered face
  std::vector<std::vector<std::uint32_t>> leaving_;   // moves with one way on that take nothing, by the face that it is
  std::vector<std::uint32_t> seeds_;                  // all other moves
  std::vector<std::uint32_t> tails_;                  // by move: the item that leads on
  std::vector<std::uint32_t> taken_;                  // by move: what it takes, as a number
  std::vector<Sum> move_sums_;
  std::vector<std::uint32_t> entered_face_;
  std::size_t item_count_ = 0;
  std::vector<Sum> sums_;
  std::vector<Sum> entered_;  // by face and held, for the number in work
  struct Open {
    Sum sum;
    std::uint32_t face;
    bool held;
    auto operator<=>(const Open&) const = default;
  };
  std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
  std::unordered_map<std::size_t, Written> written_;
};

std::vector<int> BranchSearch::digits(const BranchEnds& ends, const BranchCounts& counts) {
  std::vector<int> most;
  for (const TargetKind& kind : ends.targets) most.push_back(kind.count);
  most.insert(most.end(), counts.needs.begin(), counts.needs.end());
  most.insert(most.end(), counts.bin.begin(), counts.bin.end());
  return most;
}

void BranchSearch::make_faces() {
  faces_.push_back(ends_.base);
  for (const BranchMove& move : moves_) {
    faces_.push_back(move.enter_face);
    faces_.insert(faces_.end(), move.exits.begin(), move.exits.end());
  }
  std::sort(faces_.begin(), faces_.end());
  faces_.erase(std::unique(faces_.begin(), faces_.end()), faces_.end());
}

std::uint32_t BranchSearch::face_row(const Face& face) const {
  return static_cast<std::uint32_t>(std::lower_bound(faces_.begin(), faces_.end(), face) - faces_.begin());
}

std::optional<Joint> BranchSearch::joint_between(const Face& a, const Face& b) const {
  const catalog::MatingRule* rule = rules_.catalog().mating_rule(a.type, b.type);
  if (!rule || !rules_.may_meet(a.material, b.material)) return std::nullopt;
  return Joint{0, rule->closing};
}

void BranchSearch::make_joints() {
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

std::uint32_t BranchSearch::junction_of(std::uint32_t left, std::uint32_t right) {
  const auto known = std::find(junctions_.begin(), junctions_.end(), Junction{left, right});
  const auto row = static_cast<std::uint32_t>(known - junctions_.begin());
  if (known == junctions_.end()) junctions_.push_back({left, right});
  return static_cast<std::uint32_t>(faces_.size()) + row;
}

void BranchSearch::make_moves() {
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

void BranchSearch::improve(std::uint32_t number, std::uint32_t face, bool held, const Sum& better) {
  Sum& known = sum(face, number, held);
  if (better >= known) return;
  known = better;
  open_.push({better, face, held});
}

// A move entered by that face, with what follows it, costs that much.
void BranchSearch::enter(std::uint32_t number, std::uint32_t face, bool held, const Sum& better) {
  Sum& known = entered_[std::size_t{face} * 2 + (held ? 1 : 0)];
  if (better >= known) return;
  known = better;
  for (const Joint& joint : joined_from_[face]) improve(number, joint.face, held && !joint.closing, better);
}

std::optional<std::uint32_t> BranchSearch::without(std::uint32_t number, std::uint32_t move) const {
  for (const Taking& taking : moves_[move].takes)
    if (tally_.digit(number, taking.digit) < taking.count) return std::nullopt;
  return number - taken_[move];
}

void BranchSearch::fill_junctions(std::uint32_t number) {
  for (const std::uint32_t left : tally_.parts_of(number)) {
    const std::uint32_t right = number - left;
    if (!has_target(left) || !has_target(right)) continue;
    for (std::uint32_t row = 0; row < junctions_.size(); ++row) {
      const auto item = static_cast<std::uint32_t>(faces_.size()) + row;
      for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
        const Sum& first = sum(junctions_[row].left, left, a);
        if (!first.reachable()) continue;
        const Sum& second = sum(junctions_[row].right, right, b);
        if (!second.reachable()) continue;
        Sum& known = sum(item, number, a || b);
        known = std::min(known, first + second);
      }
    }
  }
}

void BranchSearch::fill(std::uint32_t number) {
  if (!has_target(number)) return;
  fill_junctions(number);
  entered_.assign(faces_.size() * 2, {});
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind) {
    const TargetKind& target = ends_.targets[kind];
    if (number != tally_.unit(kind)) continue;
    for (std::uint32_t face = 0; face < faces_.size(); ++face)
      if (const auto joint = joint_between(faces_[face], target.face))
        improve(number, face, target.held && !joint->closing, {0, 0});
  }
  for (const std::uint32_t move : seeds_) {
    const auto rest = without(number, move);
    if (!rest) continue;
    for (const bool held : {false, true})
      if (const Sum& follows = sum(tails_[move], *rest, held); follows.reachable())
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

std::optional<BranchTree> BranchSearch::run() {
  make_faces();
  make_joints();
  make_moves();
  if (tally_.size() * item_count_ * 2 > kMostCells)
    throw quantity::InputError({{"", 0, 0,
                                 "too many targets, needs and scarce parts of the bin to tell apart: leave out some "
                                 "needs, or bin parts that there are too few of",
                                 ""}});
  std::uint32_t needed = 0;
  for (std::size_t i = 0; i < ends_.targets.size(); ++i) {
    needed += static_cast<std::uint32_t>(ends_.targets[i].count) * tally_.unit(i);
    first_other_digit_ *= static_cast<std::uint32_t>(ends_.targets[i].count) + 1;
  }
  for (std::size_t i = 0; i < counts_.needs.size(); ++i)
    needed += static_cast<std::uint32_t>(counts_.needs[i]) * tally_.unit(ends_.targets.size() + i);
  sums_.assign(tally_.size() * item_count_ * 2, {});
  for (std::uint32_t number = 0; number < tally_.size(); ++number) fill(number);

  const std::uint32_t base = face_row(ends_.base);
  Sum best;
  const Written* first = nullptr;
  for (const bool held : {false, true}) {
    if (held && ends_.base_held) continue;
    // What stands above the needs' digits is taken from the bin: any of it may be left.
    for (std::uint32_t number = needed; number < tally_.size(); ++number) {
      if (!tally_.holds(number, needed) || sum(base, number, held) > best || !sum(base, number, held).reachable())
        continue;
      const bool improves = sum(base, number, held) < best;
      best = sum(base, number, held);
      const Written& way = written(base, number, held);
      if (improves || sorts_before(way, *first)) first = &way;
    }
  }
  if (!first) return std::nullopt;
  return first->front().tree;
}

const Written& BranchSearch::written(std::uint32_t item, std::uint32_t number, bool held) {
  const std::size_t key = cell(item, number, held);
  if (const auto known = written_.find(key); known != written_.end()) return known->second;
  Written made = item < faces_.size() ? write_face(item, number, held) : write_junction(item, number, held);
  return written_.emplace(key, std::move(made)).first->second;
}

std::optional<WrittenTree> BranchSearch::write_target(std::uint32_t face, std::uint32_t number, bool held) const {
  for (std::size_t kind = 0; kind < ends_.targets.size(); ++kind) {
    if (number != tally_.unit(kind)) continue;
    const auto joint = joint_between(faces_[face], ends_.targets[kind].face);
    if (!joint || held != (ends_.targets[kind].held && !joint->closing)) return std::nullopt;
    WrittenTree made{{static_cast<std::uint32_t>(kind)}, {}};
    made.tree.target_kind = kind;
    return made;
  }
  return std::nullopt;
}

// Targets sort before parts; a part by the rank of its id, then by the port that is entered; a plug by its rank.
WrittenTree BranchSearch::write_move(std::uint32_t row, const Written& follows) const {
  const BranchMove& move = moves_[row];
  const auto token = [&](PartId part, std::uint32_t port) {
    return (network_.rank(part) + 1) * static_cast<std::uint32_t>(kMostPorts) + port;
  };
  WrittenTree made{{token(move.part, move.enter)}, {{}, move, {}}};
  std::size_t next_way = 0;
  std::size_t next_plug = 0;
  for (std::size_t port = 0; port < rules_.catalog().part(move.part).ports.size(); ++port) {
    if (port == move.enter) continue;
    if (!move.leads_on(port)) {
      made.tokens.push_back(token(move.plugs[next_plug++], 0));
      continue;
    }
    const WrittenTree& way = follows[next_way++];
    made.tokens.insert(made.tokens.end(), way.tokens.begin(), way.tokens.end());
    made.tree.follows.push_back(way.tree);
  }
  return made;
}

Written BranchSearch::write_face(std::uint32_t face, std::uint32_t number, bool held) {
  const Sum whole = sum(face, number, held);
  if (whole == Sum{0, 0}) return {*write_target(face, number, held)};
  Written first;
  for (const Joint& joint : joints_[face]) {
    for (const std::uint32_t move : entering_[joint.face]) {
      const auto rest = without(number, move);
      if (!rest) continue;
      for (const bool beyond : {false, true}) {
        if ((beyond && !joint.closing && !moves_[move].closes) != held) continue;
        const Sum follows = sum(tails_[move], *rest, beyond);
        if (!follows.reachable() || follows + move_sums_[move] != whole) continue;
        Written made{write_move(move, written(tails_[move], *rest, beyond))};
        if (first.empty() || sorts_before(made, first)) first = std::move(made);
      }
    }
  }
  return first;
}

Written BranchSearch::write_junction(std::uint32_t item, std::uint32_t number, bool held) {
  const Junction ends = junctions_[item - faces_.size()];
  const Sum whole = sum(item, number, held);
  Written first;
  for (const std::uint32_t left : tally_.parts_of(number)) {
    for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
      const std::uint32_t right = number - left;
      if ((a || b) != held || !has_target(left) || !has_target(right)) continue;
      const Sum one = sum(ends.left, left, a);
      const Sum other = sum(ends.right, right, b);
      if (!one.reachable() || !other.reachable() || one + other != whole) continue;
      Written made = written(ends.left, left, a);
      const Written& rest = written(ends.right, right, b);
      made.insert(made.end(), rest.begin(), rest.end());
      if (first.empty() || sorts_before(made, first)) first = std::move(made);
    }
  }
  return first;
}

}  // namespace

std::optional<BranchTree> search_branches(const Network& network, const Rules& rules, const BranchEnds& ends,
                                          const BranchCounts& counts, std::vector<BranchMove> moves) {
  return BranchSearch(network, rules, ends, counts, std::move(moves)).run();
}

}  // namespace riserun::chain
