// What a branched assembly is searched for: the ends that it joins, what is gathered on the ways to them, and what it
// may take how often.
#pragma once

#include "chain/search/yardstick.h"
#include "chain/tree/branch_sum.h"
#include "chain/tree/tree_arcs.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// Targets that nothing tells apart are one kind, wanted a number of times.
struct TargetKind {
  std::vector<TargetWay> ways;
  RunEnds ends;  // of a way from the base to it alone
  bool held = false;
  int count = 1;
  ShownMetal faces{};  // the port asked for; a device shows nothing
};

struct BranchEnds {
  Face base;
  EndMetals metals;  // of the base and of the targets
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

}  // namespace riserun::chain
