// igraph's C library on the part graph: Dijkstra from one node to one other.
#pragma once

#include "bench/chain/part_graph.h"

#include <memory>

namespace riserun::bench {

class IgraphPaths {
 public:
  explicit IgraphPaths(const PartGraph& graph);
  ~IgraphPaths();
  Distance shortest(std::uint32_t from, std::uint32_t to) const;

 private:
  struct Graph;
  std::unique_ptr<Graph> graph_;
};

}  // namespace riserun::bench
