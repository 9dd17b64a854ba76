#include "chain/branch_search.h"

#include "chain/branch_table.h"

#include <unordered_map>

namespace riserun::chain {

namespace {

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

/// Reads the best trees off the finished table.
class BranchWriter {
 public:
  BranchWriter(const Network& network, const Rules& rules, const BranchTable& table)
      : network_(network), rules_(rules), table_(table) {}

  std::optional<BranchTree> first_of_best();

 private:
  const Written& written(std::uint32_t item, std::uint32_t number, bool held);
  Written write_face(std::uint32_t face, std::uint32_t number, bool held);
  Written write_junction(std::uint32_t item, std::uint32_t number, bool held);
  std::optional<WrittenTree> write_target(std::uint32_t face, std::uint32_t number, bool held) const;
  WrittenTree write_move(std::uint32_t move, const Written& follows) const;

  const Network& network_;
  const Rules& rules_;
  const BranchTable& table_;
  std::unordered_map<std::size_t, Written> written_;  // by cell
};

std::optional<BranchTree> BranchWriter::first_of_best() {
  const std::uint32_t base = table_.face_row(table_.ends().base);
  BranchSum best;
  const Written* first = nullptr;
  for (const bool held : {false, true}) {
    if (held && table_.ends().base_held) continue;
    // What stands above the needs' digits is taken from the bin: any of it may be left.
    for (std::uint32_t number = table_.needed(); number < table_.tally().size(); ++number) {
      const BranchSum& sum = table_.sum(base, number, held);
      if (!table_.tally().holds(number, table_.needed()) || sum > best || !sum.reachable()) continue;
      const bool improves = sum < best;
      best = sum;
      const Written& way = written(base, number, held);
      if (improves || sorts_before(way, *first)) first = &way;
    }
  }
  if (!first) return std::nullopt;
  return first->front().tree;
}

const Written& BranchWriter::written(std::uint32_t item, std::uint32_t number, bool held) {
  const std::size_t key = table_.cell(item, number, held);
  if (const auto known = written_.find(key); known != written_.end()) return known->second;
  Written made = table_.is_face(item) ? write_face(item, number, held) : write_junction(item, number, held);
  return written_.emplace(key, std::move(made)).first->second;
}

std::optional<WrittenTree> BranchWriter::write_target(std::uint32_t face, std::uint32_t number, bool held) const {
  for (std::size_t kind = 0; kind < table_.ends().targets.size(); ++kind) {
    if (number != table_.tally().unit(kind)) continue;
    const auto joint = table_.joint_between(table_.face(face), table_.ends().targets[kind].face);
    if (!joint || held != (table_.ends().targets[kind].held && !joint->closing)) return std::nullopt;
    WrittenTree made{{static_cast<std::uint32_t>(kind)}, {}};
    made.tree.target_kind = kind;
    return made;
  }
  return std::nullopt;
}

// Targets sort before parts; a part by the rank of its id, then by the port that is entered; a plug by its rank.
WrittenTree BranchWriter::write_move(std::uint32_t row, const Written& follows) const {
  const BranchMove& move = table_.moves()[row];
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

Written BranchWriter::write_face(std::uint32_t face, std::uint32_t number, bool held) {
  const BranchSum whole = table_.sum(face, number, held);
  if (whole == BranchSum{0, 0}) return {*write_target(face, number, held)};
  Written first;
  for (const FaceJoint& joint : table_.joints(face)) {
    for (const std::uint32_t move : table_.entering(joint.face)) {
      const auto rest = table_.without(number, move);
      if (!rest) continue;
      for (const bool beyond : {false, true}) {
        if ((beyond && !joint.closing && !table_.moves()[move].closes) != held) continue;
        const BranchSum follows = table_.sum(table_.tail(move), *rest, beyond);
        if (!follows.reachable() || follows + table_.move_sum(move) != whole) continue;
        Written made{write_move(move, written(table_.tail(move), *rest, beyond))};
        if (first.empty() || sorts_before(made, first)) first = std::move(made);
      }
    }
  }
  return first;
}

Written BranchWriter::write_junction(std::uint32_t item, std::uint32_t number, bool held) {
  const Junction ends = table_.junction(item);
  const BranchSum whole = table_.sum(item, number, held);
  Written first;
  for (const std::uint32_t left : table_.tally().parts_of(number)) {
    for (const auto& [a, b] : {std::pair(false, false), std::pair(false, true), std::pair(true, false)}) {
      const std::uint32_t right = number - left;
      if ((a || b) != held || !table_.has_target(left) || !table_.has_target(right)) continue;
      const BranchSum one = table_.sum(ends.left, left, a);
      const BranchSum other = table_.sum(ends.right, right, b);
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
  const BranchTable table(rules, ends, counts, std::move(moves));
  return BranchWriter(network, rules, table).first_of_best();
}

}  // namespace riserun::chain
