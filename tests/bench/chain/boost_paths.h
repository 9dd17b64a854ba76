// Boost's dijkstra_shortest_paths on the part graph, in compressed form.
#pragma once

#include "bench/chain/part_graph.h"

#include <memory>

namespace riserun::bench {

class BoostPaths {
 public:
  explicit BoostPaths(const PartGraph& graph);
  ~BoostPaths();
  /// One search from the first node, with the path read off its predecessors. Stops when the goal is reached.
  Distance shortest(std::uint32_t from, std::uint32_t to) const;
  /// The same without stopping early: the plain call.
  Distance shortest_of_all(std::uint32_t from, std::uint32_t to) const;

 private:
  struct Graph;
  std::unique_ptr<Graph> graph_;
};

}  // namespace riserun::bench
