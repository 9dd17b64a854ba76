// The search for a branched assembly: a dynamic program over subsets of the targets on the graph of open ends
// (S. E. Dreyfus and R. A. Wagner, "The Steiner problem in graphs", Networks 1, 1971), where a part with several ways
// on is an arc with several heads (D. E. Knuth, "A generalization of Dijkstra's algorithm", Information Processing
// Letters 6, 1977).
#pragma once

#include "chain/branch_moves.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// Targets that nothing tells apart are one kind, wanted a number of times.
struct TargetKind {
  Face face;
  bool held = false;
  int count = 1;
};

struct BranchEnds {
  Face base;
  bool base_held = false;
  std::vector<TargetKind> targets;
};

/// What is counted, beside the targets, in one mixed number: a digit for each kind of target, then the others.
struct BranchCounts {
  std::vector<int> needs;  // each to be met in full; digits follow those of the targets
  std::vector<int> bin;    // each at most that often; digits follow those of the needs
};

/// A part with what follows at the ports that lead on, or a target.
struct BranchTree {
  std::optional<std::size_t> target_kind;
  BranchMove move;  // where it is a part
  std::vector<BranchTree> follows;
};

/// The best tree, provably: of all best ones the first as AssemblyRequest states. nullopt: there is none.
/// @throws InputError where the counts are too many to be told apart
std::optional<BranchTree> search_branches(const Network& network, const Rules& rules, const BranchEnds& ends,
                                          const BranchCounts& counts, std::vector<BranchMove> moves);

}  // namespace riserun::chain
