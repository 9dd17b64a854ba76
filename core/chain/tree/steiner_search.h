// The search for a branched assembly: a dynamic program over subsets of the targets on the graph of open ends
// (S. E. Dreyfus and R. A. Wagner, "The Steiner problem in graphs", Networks 1, 1971), where a part with several ways
// on is an arc with several heads (D. E. Knuth, "A generalization of Dijkstra's algorithm", Information Processing
// Letters 6, 1977): the minimum Steiner tree.
//
// How it works: for each set of targets in turn, what it costs at least to lead on from each open end to that set: by
// splitting it in two at a part with several ways on, and by settling open ends cheapest first (Dijkstra's algorithm)
// over parts with one way on. The tree is then read off the table, of equal ones the first by its ids.
#pragma once

#include "chain/tree/tree_arcs.h"

#include <limits>
#include <optional>
#include <vector>

namespace riserun::chain {

/// A Cost in two words; sums of dollars up to ten billions, of parts up to a million.
struct BranchSum {
  std::uint64_t first = std::numeric_limits<std::uint64_t>::max();
  std::uint64_t second = 0;
  auto operator<=>(const BranchSum&) const = default;
  bool reachable() const { return first != std::numeric_limits<std::uint64_t>::max(); }
  friend BranchSum operator+(BranchSum a, const BranchSum& b) { return {a.first + b.first, a.second + b.second}; }
};

/// Targets that nothing tells apart are one kind, wanted a number of times.
struct TargetKind {
  std::vector<TargetWay> ways;
  bool held = false;
  int count = 1;
};

struct BranchEnds {
  Face base;
  bool base_held = false;
  std::vector<TargetKind> targets;
};

/// To be gathered in full on the ways to the targets.
struct Wanted {
  int count = 1;
  std::optional<std::size_t> kind;  // only on the way to that kind of target, of which there is one
  bool quarter_turn = false;        // not by a part, but where the way turns
};

/// What is counted, beside the targets, in one mixed number: a digit for each kind of target, then the others.
struct BranchCounts {
  std::vector<Wanted> wanted;  // digits follow those of the targets
  std::vector<int> scarce;     // each at most that often; digits follow those of what is wanted
};

/// A part with what follows at the ports that lead on, or a target.
struct BranchTree {
  std::optional<std::size_t> target_kind;
  TargetWay end;    // where it is a target
  BranchMove move;  // where it is a part
  std::vector<BranchTree> follows;
};

struct FoundTree {
  BranchTree tree;
  BranchSum sum;
  std::vector<std::uint32_t> tokens;  // of trees with the same sum, the one whose tokens sort first is the better one
};

/// The best tree, provably: of all best ones the first as AssemblyRequest states. nullopt: there is none.
/// @throws InputError where the counts are too many to be told apart
std::optional<FoundTree> steiner_search(const FoldedCatalog& folded, const Rules& rules, const BranchEnds& ends,
                                        const BranchCounts& counts, std::vector<BranchMove> moves);

}  // namespace riserun::chain
