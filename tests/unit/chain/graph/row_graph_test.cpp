// RowGraph and its sight by Boost.Graph: the concepts that the algorithms ask for, and rows that hold what was put in.
#include "chain/graph/arc.h"
#include "chain/graph/row_graph_traits.h"

#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/filtered_graph.hpp>
#include <boost/graph/graph_concepts.hpp>
#include <boost/graph/strong_components.hpp>
#include <gtest/gtest.h>

namespace {

using namespace riserun::chain;  // NOLINT(google-build-using-namespace)

struct Edge {
  std::uint32_t to = 0;
  char name = ' ';
};
using Graph = RowGraph<Edge>;
using VertexIndex = boost::typed_identity_property_map<std::uint32_t>;

BOOST_CONCEPT_ASSERT((boost::concepts::IncidenceGraphConcept<Graph>));
BOOST_CONCEPT_ASSERT((boost::concepts::VertexListGraphConcept<Graph>));
BOOST_CONCEPT_ASSERT((boost::concepts::IncidenceGraphConcept<RowGraph<InEdge>>));
BOOST_CONCEPT_ASSERT((boost::concepts::VertexListGraphConcept<RowGraph<Arc>>));

// 0 and 1 lead to each other, 2 leads on from there to 3 and, beside it once more, to 3; 4 stands alone.
Graph small_graph() {
  return Graph(5, [](auto emit) {
    emit(2u, Edge{3, 'c'});
    emit(0u, Edge{1, 'a'});
    emit(1u, Edge{0, 'b'});
    emit(2u, Edge{3, 'd'});
    emit(1u, Edge{2, 'e'});
  });
}

std::string names(std::span<const Edge> row) {
  std::string text;
  for (const Edge& edge : row) text += edge.name;
  return text;
}

TEST(RowGraph, SortsEdgesIntoRowsInTheirOrder) {
  const Graph graph = small_graph();
  EXPECT_EQ(graph.vertex_count(), 5u);
  EXPECT_EQ(names(graph.out_of(0)), "a");
  EXPECT_EQ(names(graph.out_of(1)), "be");
  EXPECT_EQ(names(graph.out_of(2)), "cd");
  EXPECT_EQ(names(graph.out_of(4)), "");
  EXPECT_EQ(names(graph.edges()), "abecd");
  EXPECT_EQ(Graph().vertex_count(), 0u);
}

TEST(RowGraph, ShowsBoostEachEdgeWithBothItsEnds) {
  const Graph graph = small_graph();
  EXPECT_EQ(num_vertices(graph), 5u);
  EXPECT_EQ(out_degree(1, graph), 2u);
  const auto [first, last] = out_edges(1, graph);
  ASSERT_EQ(last - first, 2);
  EXPECT_EQ(source(*first, graph), 1u);
  EXPECT_EQ(target(*first, graph), 0u);
  EXPECT_EQ(target(*(first + 1), graph), 2u);
}

TEST(RowGraph, BoostVisitsItAndPartOfIt) {
  const Graph graph = small_graph();
  const auto reached_from_0 = [](const auto& seen) {
    std::vector<boost::default_color_type> colors(5, boost::white_color);
    boost::queue<std::uint32_t> waiting;
    boost::breadth_first_visit(seen, 0u, waiting, boost::default_bfs_visitor(),
                               boost::make_iterator_property_map(colors.begin(), VertexIndex()));
    return std::count(colors.begin(), colors.end(), boost::black_color);
  };
  EXPECT_EQ(reached_from_0(graph), 4);
  struct KeepOne {
    char left_out = ' ';
    bool operator()(const RowEdge<Edge>& edge) const { return edge.edge->name != left_out; }
  };
  EXPECT_EQ(reached_from_0(boost::filtered_graph<Graph, KeepOne>(graph, KeepOne{'e'})), 2);
}

TEST(RowGraph, BoostFindsWhatHangsTogether) {
  const Graph graph = small_graph();
  std::vector<int> component(5);
  EXPECT_EQ(boost::strong_components(graph, boost::make_iterator_property_map(component.begin(), VertexIndex()),
                                     boost::vertex_index_map(VertexIndex())),
            4);
  EXPECT_EQ(component[0], component[1]);
  EXPECT_NE(component[1], component[2]);
}

}  // namespace
