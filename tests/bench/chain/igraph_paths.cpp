#include "bench/chain/igraph_paths.h"

#include <igraph/igraph.h>

#include <cmath>
#include <stdexcept>

namespace riserun::bench {

struct IgraphPaths::Graph {
  igraph_t graph;
  igraph_vector_t weights;
};

namespace {

void check(igraph_error_t error) {
  if (error != IGRAPH_SUCCESS) throw std::runtime_error(igraph_strerror(error));
}

// It warns on standard error of every pair that no path joins.
void say_nothing(const char*, const char*, int) {}

}  // namespace

IgraphPaths::IgraphPaths(const PartGraph& graph) : graph_(std::make_unique<Graph>()) {
  igraph_set_warning_handler(say_nothing);
  igraph_vector_int_t ends;
  const auto count = static_cast<igraph_integer_t>(graph.arcs.size());
  check(igraph_vector_int_init(&ends, 2 * count));
  check(igraph_vector_init(&graph_->weights, count));
  for (igraph_integer_t i = 0; i < count; ++i) {
    const PartArc& arc = graph.arcs[static_cast<std::size_t>(i)];
    VECTOR(ends)[2 * i] = arc.from;
    VECTOR(ends)[2 * i + 1] = arc.to;
    VECTOR(graph_->weights)[i] = static_cast<igraph_real_t>(arc.weight);
  }
  check(igraph_create(&graph_->graph, &ends, graph.nodes, IGRAPH_DIRECTED));
  igraph_vector_int_destroy(&ends);
}

IgraphPaths::~IgraphPaths() {
  igraph_destroy(&graph_->graph);
  igraph_vector_destroy(&graph_->weights);
}

Distance IgraphPaths::shortest(std::uint32_t from, std::uint32_t to) const {
  igraph_vector_int_t edges;
  check(igraph_vector_int_init(&edges, 0));
  check(igraph_get_shortest_path_dijkstra(&graph_->graph, nullptr, &edges, from, to, &graph_->weights, IGRAPH_OUT));
  double weight = 0.0;
  const igraph_integer_t count = igraph_vector_int_size(&edges);
  for (igraph_integer_t i = 0; i < count; ++i) weight += VECTOR(graph_->weights)[VECTOR(edges)[i]];
  igraph_vector_int_destroy(&edges);
  if (count == 0) return std::nullopt;
  return std::llround(weight);
}

}  // namespace riserun::bench
