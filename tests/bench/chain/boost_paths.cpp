#include "bench/chain/boost_paths.h"

#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>

#include <limits>

namespace riserun::bench {

namespace {

using Compressed = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property,
                                                      boost::property<boost::edge_weight_t, Weight>>;
using Vertex = boost::graph_traits<Compressed>::vertex_descriptor;

struct Reached {};

struct StopAt : boost::dijkstra_visitor<> {
  explicit StopAt(Vertex node) : goal(node) {}
  template <class Graph>
  void examine_vertex(Vertex node, const Graph&) const {
    if (node == goal) throw Reached();
  }
  Vertex goal;
};

}  // namespace

struct BoostPaths::Graph {
  Compressed compressed;
};

BoostPaths::BoostPaths(const PartGraph& graph) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> ends;
  std::vector<Weight> weights;
  for (const PartArc& arc : graph.arcs) {
    ends.emplace_back(arc.from, arc.to);
    weights.push_back(arc.weight);
  }
  graph_ = std::make_unique<Graph>(
      Graph{Compressed(boost::edges_are_unsorted_multi_pass, ends.begin(), ends.end(), weights.begin(), graph.nodes)});
}

BoostPaths::~BoostPaths() = default;

namespace {

template <class Visitor>
Distance run(const Compressed& graph, std::uint32_t from, std::uint32_t to, Visitor visitor) {
  const auto index = get(boost::vertex_index, graph);
  std::vector<Vertex> before(num_vertices(graph));
  std::vector<Weight> distances(num_vertices(graph), std::numeric_limits<Weight>::max());
  try {
    boost::dijkstra_shortest_paths(graph, Vertex{from},
                                   boost::predecessor_map(boost::make_iterator_property_map(before.begin(), index))
                                       .distance_map(boost::make_iterator_property_map(distances.begin(), index))
                                       .weight_map(get(boost::edge_weight, graph))
                                       .visitor(visitor));
  } catch (const Reached&) {
  }
  if (distances[to] == std::numeric_limits<Weight>::max()) return std::nullopt;
  std::vector<Vertex> path{Vertex{to}};
  while (path.back() != from) path.push_back(before[path.back()]);
  return distances[to];
}

}  // namespace

Distance BoostPaths::shortest(std::uint32_t from, std::uint32_t to) const {
  return run(graph_->compressed, from, to, StopAt(to));
}

Distance BoostPaths::shortest_of_all(std::uint32_t from, std::uint32_t to) const {
  return run(graph_->compressed, from, to, boost::dijkstra_visitor<>());
}

}  // namespace riserun::bench
