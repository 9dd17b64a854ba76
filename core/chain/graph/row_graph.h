// A directed graph in compressed rows: the edges out of a vertex stand side by side. row_graph_traits.h shows it to
// Boost.Graph, whose algorithms then run over the rows as they are.
#pragma once

#include <cassert>
#include <cstdint>
#include <numeric>
#include <span>
#include <utility>
#include <vector>

namespace riserun::chain {

/// Vertices are the numbers from 0 up to vertex_count(). Parallel edges and loops are allowed.
///
/// @tparam Edge  a default-constructible struct with `to`, the vertex that the edge leads to
template <class Edge>
class RowGraph {
 public:
  RowGraph() = default;
  /// @param first  by vertex: its first row in `edges`, and the end
  RowGraph(std::vector<std::uint32_t> first, std::vector<Edge> edges)
      : first_(std::move(first)), edges_(std::move(edges)) {
    assert(!first_.empty() && first_.back() == edges_.size());
  }
  /// Sorts edges that come in any order into rows; within a row they stay in theirs. O(vertices + edges).
  ///
  /// @param each_edge  each_edge(emit) calls emit(vertex, edge) for every edge; called twice, the same both times
  template <class EachEdge>
  RowGraph(std::uint32_t vertex_count, EachEdge each_edge) : first_(vertex_count + 1, 0) {
    each_edge([&](std::uint32_t vertex, const Edge&) { ++first_[vertex + 1]; });
    std::partial_sum(first_.begin(), first_.end(), first_.begin());
    edges_.resize(first_.back());
    std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
    each_edge([&](std::uint32_t vertex, const Edge& edge) { edges_[next[vertex]++] = edge; });
  }

  std::uint32_t vertex_count() const { return static_cast<std::uint32_t>(first_.size() - 1); }
  std::span<const Edge> out_of(std::uint32_t vertex) const {
    return std::span(edges_).subspan(first_[vertex], first_[vertex + 1] - first_[vertex]);
  }
  std::span<const Edge> edges() const { return edges_; }

 private:
  std::vector<std::uint32_t> first_{0};
  std::vector<Edge> edges_;
};

}  // namespace riserun::chain
