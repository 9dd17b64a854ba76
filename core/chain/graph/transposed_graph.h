// The arcs of a port graph turned round, made once for the distances to every goal.
#pragma once

#include "chain/graph/arc.h"
#include "chain/graph/row_graph.h"

#include <vector>

namespace riserun::chain {

class TransposedGraph {
 public:
  TransposedGraph() = default;
  /// O(nodes + arcs), and of merging O(arcs * log(arcs)).
  ///
  /// @param alike  by node: nodes with the same number have the same arcs out, but for the place of the cost that tells
  ///               bores apart; empty where that is not so
  TransposedGraph(const RowGraph<Arc>& arcs, std::vector<std::uint32_t> alike);

  /// By node: the arcs that lead to it.
  const RowGraph<InEdge>& in_edges() const { return in_edges_; }
  /// The first place of all costs is 0, and the second a whole number from 1 to 64: parts.
  bool has_small_steps() const { return has_small_steps_; }

  /// Nodes that are alike as one, and parallel arcs as one that is in each place the least; no vertices where none are
  /// told to be alike.
  const RowGraph<InEdge>& merged() const { return merged_; }
  bool is_merged() const { return !alike_.empty(); }
  /// Its vertex in merged().
  /// @pre is_merged()
  std::uint32_t merged_row(std::uint32_t node) const { return alike_[node]; }

 private:
  void merge_alike();

  RowGraph<InEdge> in_edges_;
  bool has_small_steps_ = false;
  std::vector<std::uint32_t> alike_;
  RowGraph<InEdge> merged_;
};

}  // namespace riserun::chain
