#include "chain/tree/steiner_search.h"

#include "chain/search/yardstick.h"
#include "chain/tree/steiner_table.h"

#include <map>

namespace riserun::chain {

namespace {

/// A tree, and the same as tokens that sort as AssemblyRequest states.
struct WrittenTree {
  Rest rest;
  std::vector<std::uint32_t> tokens;
  BranchTree tree;
};

/// The first of all best ways to lead on from an open end (one tree) or from a junction (one for each of its ends).
using Written = std::vector<WrittenTree>;

Rest rest_of_trees(const Written& written) {
  Rest rest;
  for (const WrittenTree& tree : written) rest = rest + tree.rest;
  return rest;
}

bool sorts_before(const Written& a, const Written& b) {
  if (const auto order = rest_of_trees(a) <=> rest_of_trees(b); order != 0) return order < 0;
  std::vector<std::uint32_t> first;
  std::vector<std::uint32_t> second;
  for (const WrittenTree& tree : a) first.insert(first.end(), tree.tokens.begin(), tree.tokens.end());
  for (const WrittenTree& tree : b) second.insert(second.end(), tree.tokens.begin(), tree.tokens.end());
  return first < second;
}

std::uint32_t token(std::uint32_t rank, std::uint32_t port) {
  return (rank + 1) * static_cast<std::uint32_t>(kMostPorts) + port;
}

/// Reads the best trees off the finished table.
class BranchWriter {
 public:
  BranchWriter(const FoldedCatalog& folded, const Rules& rules, const SteinerTable& table, const Yardstick& yardstick)
      : folded_(folded), rules_(rules), table_(table), yardstick_(yardstick) {}

  std::optional<FoundTree> first_of_best();

 private:
  /// @param left  what each end of the item shows, in the order of its ports
  const Written& written(std::uint32_t item, std::uint32_t number, bool held, const std::vector<ShownMetal>& left);
  Written write_face(std::uint32_t face, std::uint32_t number, bool held, const ShownMetal& left);
  Written write_junction(std::uint32_t item, std::uint32_t number, bool held, const std::vector<ShownMetal>& left);
  void write_targets(std::uint32_t face, std::uint32_t number, bool held, const ShownMetal& left, Written& first) const;
  Rest of_plugs(const BranchMove& move) const;
  WrittenTree write_move(std::uint32_t move, const Written& follows) const;

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const SteinerTable& table_;
  const Yardstick yardstick_;
  std::map<std::pair<std::size_t, std::vector<ShownMetal>>, Written> written_;  // by cell and what its ends show
};

std::optional<FoundTree> BranchWriter::first_of_best() {
  const std::uint32_t base = table_.base_row();
  BranchSum best;
  const Written* first = nullptr;
  for (const bool held : {false, true}) {
    if (held && table_.ends().base_held) continue;
    // What stands above the needs' digits is taken from the bin: any of it may be left.
    for (std::uint32_t number = table_.needed(); number < table_.tally().size(); ++number) {
      if (!table_.possible(number) || !table_.tally().holds(number, table_.needed())) continue;
      const BranchSum& sum = table_.sum(base, number, held);
      if (sum > best || !sum.reachable()) continue;
      const bool improves = sum < best;
      best = sum;
      const Written& way = written(base, number, held, {table_.ends().metals.first});
      if (improves || sorts_before(way, *first)) first = &way;
    }
  }
  if (!first) return std::nullopt;
  return FoundTree{first->front().tree, best, first->front().rest, first->front().tokens};
}

const Written& BranchWriter::written(std::uint32_t item, std::uint32_t number, bool held,
                                     const std::vector<ShownMetal>& left) {
  const std::pair key(table_.cell(item, number, held), left);
  if (const auto known = written_.find(key); known != written_.end()) return known->second;
  Written made =
      table_.is_face(item) ? write_face(item, number, held, left.front()) : write_junction(item, number, held, left);
  return written_.emplace(key, std::move(made)).first->second;
}

// Of the ways to end here that cost what the cell does, the first.
void BranchWriter::write_targets(std::uint32_t face, std::uint32_t number, bool held, const ShownMetal& left,
                                 Written& first) const {
  for (std::size_t kind = 0; kind < table_.ends().targets.size(); ++kind) {
    const TargetKind& target = table_.ends().targets[kind];
    for (std::size_t way = 0; way < target.ways.size(); ++way) {
      const TargetWay& end = target.ways[way];
      if (!table_.is_end(number, kind, end)) continue;
      if (table_.way_sum(kind, way) + table_.passing(number)[face] != table_.sum(face, number, held)) continue;
      const auto joint = table_.joint_between(table_.face(face), end.face);
      if (!joint || held != (target.held && !joint->closing)) continue;
      WrittenTree made{
          end.rest + yardstick_.of_joint(rules_.catalog(), left, target.faces), {static_cast<std::uint32_t>(kind)}, {}};
      if (end.device.valid()) made.tokens.push_back(token(folded_.rank(end.device), end.port));
      made.tree.target_kind = kind;
      made.tree.end = end;
      Written whole{std::move(made)};
      if (first.empty() || sorts_before(whole, first)) first = std::move(whole);
    }
  }
}

Rest BranchWriter::of_plugs(const BranchMove& move) const {
  Rest rest;
  for (const auto& [host, plug] : move.plugged) rest = rest + yardstick_.of_joint(rules_.catalog(), host, plug);
  return rest;
}

// Targets sort before parts; a part by the rank of its id, then by the port that is entered; a plug by its rank.
WrittenTree BranchWriter::write_move(std::uint32_t row, const Written& follows) const {
  const BranchMove& move = table_.moves()[row];
  WrittenTree made{move.rest + yardstick_.rest_of(move.makes) + of_plugs(move) + rest_of_trees(follows),
                   {token(folded_.rank(move.part), move.enter)},
                   {{}, {}, move, {}}};
  std::size_t next_way = 0;
  std::size_t next_plug = 0;
  for (std::size_t port = 0; port < rules_.catalog().part(move.part).ports.size(); ++port) {
    if (port == move.enter) continue;
    if (!move.leads_on(port)) {
      made.tokens.push_back(token(folded_.rank(move.plugs[next_plug++]), 0));
      continue;
    }
    const WrittenTree& way = follows[next_way++];
    made.tokens.insert(made.tokens.end(), way.tokens.begin(), way.tokens.end());
    made.tree.follows.push_back(way.tree);
  }
  return made;
}

Written BranchWriter::write_face(std::uint32_t face, std::uint32_t number, bool held, const ShownMetal& left) {
  const BranchSum whole = table_.sum(face, number, held);
  Written first;
  write_targets(face, number, held, left, first);
  const std::vector<BranchSum>& passing = table_.passing(number);
  const std::vector<BranchSum>& joining = table_.joining(number);
  for (const FaceJoint& joint : table_.joints(face)) {
    for (const std::uint32_t move : table_.entering(joint.face)) {
      const auto taken = table_.without(number, move);
      const auto rest = taken ? table_.behind(table_.gate(move), *taken) : std::nullopt;
      if (!rest) continue;
      for (const bool beyond : {false, true}) {
        if ((beyond && !joint.closing && !table_.moves()[move].closes) != held) continue;
        const BranchSum follows = table_.sum(table_.tail(move), *rest, beyond);
        if (!follows.reachable()) continue;
        BranchSum all = follows + table_.move_sum(move) + passing[joint.face] + passing[face];
        if (face != table_.base_row()) all = all + joining[joint.face];
        if (all != whole) continue;
        for (std::uint32_t row = move; row < table_.alike_end(move); ++row) {
          const BranchMove& part = table_.moves()[row];
          Written made{write_move(row, written(table_.tail(move), *rest, beyond, part.left))};
          made.front().rest = made.front().rest + yardstick_.of_joint(rules_.catalog(), left, part.entered);
          if (first.empty() || sorts_before(made, first)) first = std::move(made);
        }
      }
    }
  }
  return first;
}

Written BranchWriter::write_junction(std::uint32_t item, std::uint32_t number, bool held,
                                     const std::vector<ShownMetal>& shown) {
  const std::vector<ShownMetal> of_left(shown.begin(), shown.empty() ? shown.end() : shown.end() - 1);
  const std::vector<ShownMetal> of_right(shown.begin() + static_cast<std::ptrdiff_t>(of_left.size()), shown.end());
  const Junction ends = table_.junction(item);
  const BranchSum whole = table_.sum(item, number, held);
  Written first;
  for (const std::uint32_t whole_left : table_.splits_of(number)) {
    const auto left = table_.behind(ends.left_gate, whole_left);
    const auto right = table_.behind(ends.right_gate, number - whole_left);
    if (!left || !right) continue;
    for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
      if ((a || b) != held) continue;
      const BranchSum one = table_.sum(ends.left, *left, a);
      const BranchSum other = table_.sum(ends.right, *right, b);
      if (!one.reachable() || !other.reachable() || one + other != whole) continue;
      Written made = written(ends.left, *left, a, of_left);
      const Written& rest = written(ends.right, *right, b, of_right);
      made.insert(made.end(), rest.begin(), rest.end());
      if (first.empty() || sorts_before(made, first)) first = std::move(made);
    }
  }
  return first;
}

}  // namespace

std::optional<FoundTree> steiner_search(const FoldedCatalog& folded, const Rules& rules, const BranchEnds& ends,
                                        const BranchCounts& counts, std::vector<BranchMove> moves) {
  const SteinerTable table(rules, ends, counts, std::move(moves));
  std::vector<Make> makes;
  for (const BranchMove& move : table.moves()) makes.insert(makes.end(), move.makes.begin(), move.makes.end());
  std::optional<FoundTree> best;
  for (const Yardstick& yardstick : yardsticks(folded.catalog(), ends.metals, std::move(makes))) {
    auto found = BranchWriter(folded, rules, table, yardstick).first_of_best();
    if (!found) return std::nullopt;
    if (!best || std::tie(found->rest, found->tokens) < std::tie(best->rest, best->tokens)) best = std::move(found);
  }
  return best;
}

}  // namespace riserun::chain
