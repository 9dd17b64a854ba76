// A RowGraph as Boost.Graph sees it: an IncidenceGraph and a VertexListGraph. Only .cpp files include this.
#pragma once

#include "chain/graph/row_graph.h"

#include <boost/graph/graph_traits.hpp>
#include <boost/iterator/counting_iterator.hpp>
#include <boost/iterator/iterator_facade.hpp>

#include <limits>

namespace riserun::chain {

/// The descriptor of an edge: Boost asks it where it comes from, which the row itself does not say.
template <class Edge>
struct RowEdge {
  std::uint32_t from = 0;
  const Edge* edge = nullptr;
  bool operator==(const RowEdge&) const = default;
};

template <class Edge>
class RowEdgeIterator : public boost::iterator_facade<RowEdgeIterator<Edge>, RowEdge<Edge>,
                                                      boost::random_access_traversal_tag, RowEdge<Edge>> {
 public:
  RowEdgeIterator() = default;
  RowEdgeIterator(std::uint32_t from, const Edge* edge) : at_{from, edge} {}

 private:
  friend class boost::iterator_core_access;
  RowEdge<Edge> dereference() const { return at_; }
  bool equal(const RowEdgeIterator& other) const { return at_.edge == other.at_.edge; }
  void increment() { ++at_.edge; }
  void decrement() { --at_.edge; }
  void advance(std::ptrdiff_t by) { at_.edge += by; }
  std::ptrdiff_t distance_to(const RowEdgeIterator& other) const { return other.at_.edge - at_.edge; }

  RowEdge<Edge> at_;
};

template <class Edge>
std::pair<RowEdgeIterator<Edge>, RowEdgeIterator<Edge>> out_edges(std::uint32_t vertex, const RowGraph<Edge>& graph) {
  const std::span<const Edge> row = graph.out_of(vertex);
  return {{vertex, row.data()}, {vertex, row.data() + row.size()}};
}
template <class Edge>
std::size_t out_degree(std::uint32_t vertex, const RowGraph<Edge>& graph) {
  return graph.out_of(vertex).size();
}
template <class Edge>
std::uint32_t source(const RowEdge<Edge>& edge, const RowGraph<Edge>&) {
  return edge.from;
}
template <class Edge>
std::uint32_t target(const RowEdge<Edge>& edge, const RowGraph<Edge>&) {
  return edge.edge->to;
}
template <class Edge>
std::pair<boost::counting_iterator<std::uint32_t>, boost::counting_iterator<std::uint32_t>> vertices(
    const RowGraph<Edge>& graph) {
  return {boost::counting_iterator<std::uint32_t>(0), boost::counting_iterator<std::uint32_t>(graph.vertex_count())};
}
template <class Edge>
std::size_t num_vertices(const RowGraph<Edge>& graph) {
  return graph.vertex_count();
}

}  // namespace riserun::chain

template <class Edge>
struct boost::graph_traits<riserun::chain::RowGraph<Edge>> {
  using vertex_descriptor = std::uint32_t;
  using edge_descriptor = riserun::chain::RowEdge<Edge>;
  using out_edge_iterator = riserun::chain::RowEdgeIterator<Edge>;
  using vertex_iterator = boost::counting_iterator<std::uint32_t>;
  using in_edge_iterator = void;  // filtered_graph names it, whether there is one or not; so the next but one
  using edge_iterator = void;
  using directed_category = boost::directed_tag;
  using edge_parallel_category = boost::allow_parallel_edge_tag;
  struct traversal_category : boost::incidence_graph_tag, boost::vertex_list_graph_tag {};
  using vertices_size_type = std::size_t;
  using edges_size_type = std::size_t;
  using degree_size_type = std::size_t;
  static vertex_descriptor null_vertex() { return std::numeric_limits<std::uint32_t>::max(); }
};
