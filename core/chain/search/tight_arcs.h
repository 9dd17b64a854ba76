// The arcs on shortest paths, as a search finds them: from them all best chains can be read, not only one. An arc is
// added in O(1); reading takes O(arcs).
#pragma once

#include "chain/search/first_by_ids.h"
#include "chain/search/search_state.h"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace riserun::chain {

/// States by their rows. For each the arcs by which it is reached at the least cost so far, as a list.
class TightArcs {
 public:
  /// A cheaper way to the state was found: the arcs known so far are on no shortest path to it.
  void forget(std::uint32_t state) {
    if (first_.size() <= state) first_.resize(state + 1, kNoRow);
    first_[state] = kNoRow;
  }
  /// @param move  kNoRow: the last joint, which leads to the goal
  void add(std::uint32_t from, std::uint32_t move, std::uint32_t to) {
    // The start is led to by no arc and still has its place.
    const std::uint32_t farther = std::max(from, to);
    if (first_.size() <= farther) first_.resize(farther + 1, kNoRow);
    arcs_.push_back({from, move, first_[to]});
    first_[to] = static_cast<std::uint32_t>(arcs_.size() - 1);
  }

  struct Onward {
    std::uint32_t move = kNoRow;
    std::uint32_t to = 0;
  };

  /// For each state on a shortest path to the goal, the arcs that lead on along one.
  std::vector<std::vector<Onward>> turned_round(std::uint32_t goal) const {
    std::vector<std::vector<Onward>> onward(first_.size());
    std::vector<bool> marked(first_.size(), false);
    std::vector<std::uint32_t> open{goal};
    marked[goal] = true;
    while (!open.empty()) {
      const std::uint32_t state = open.back();
      open.pop_back();
      for (std::uint32_t row = first_[state]; row != kNoRow; row = arcs_[row].next) {
        const std::uint32_t from = arcs_[row].from;
        onward[from].push_back({arcs_[row].move, state});
        if (marked[from]) continue;
        marked[from] = true;
        open.push_back(from);
      }
    }
    return onward;
  }

  /// Of all chains from the start to the goal along these arcs, the one whose part ids sort first. O(arcs).
  std::vector<Move> first_by_ids(const FoldedCatalog& folded, const std::vector<Move>& moves, std::uint32_t start,
                                 std::uint32_t goal) const {
    const std::vector<std::vector<Onward>> onward = turned_round(goal);
    FirstByIds walk(folded, moves, [&](std::uint32_t state, auto emit) {
      for (const Onward& arc : onward[state]) emit(arc.move, arc.to);
    });
    return walk.from(start);
  }

 private:
  struct Arriving {
    std::uint32_t from = 0;
    std::uint32_t move = kNoRow;
    std::uint32_t next = kNoRow;  // arc in the same list
  };
  std::vector<std::uint32_t> first_;  // by state: the first arc of its list
  std::vector<Arriving> arcs_;
};

}  // namespace riserun::chain
