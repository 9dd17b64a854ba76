// The search for a branched assembly: a dynamic program over subsets of the targets on the graph of open ends
// (S. E. Dreyfus and R. A. Wagner, "The Steiner problem in graphs", Networks 1, 1971), where a part with several ways
// on is an arc with several heads (D. E. Knuth, "A generalization of Dijkstra's algorithm", Information Processing
// Letters 6, 1977): the minimum Steiner tree.
//
// How it works: for each set of targets in turn, what it costs at least to lead on from each open end to that set: by
// splitting it in two at a part with several ways on, and by settling open ends cheapest first (Dijkstra's algorithm)
// over parts with one way on. What it weighs to pass a port depends on the targets beyond it, which the set says. The
// tree is then read off the table, of equal ones the best by what decides between them, at last by its ids.
#pragma once

#include "chain/tree/steiner_problem.h"

#include <optional>
#include <vector>

namespace riserun::chain {

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
  Rest rest;                          // what decides between equal sums
  std::vector<std::uint32_t> tokens;  // then the one whose tokens sort first is the better one
};

/// The best tree, provably: of all best ones the first as AssemblyRequest states. nullopt: there is none.
/// @throws InputError where the counts are too many to be told apart
std::optional<FoundTree> steiner_search(const FoldedCatalog& folded, const Rules& rules, const BranchEnds& ends,
                                        const BranchCounts& counts, std::vector<BranchMove> moves);

}  // namespace riserun::chain
