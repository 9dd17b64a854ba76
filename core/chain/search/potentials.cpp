#include "chain/search/potentials.h"

#include "chain/graph/row_graph_traits.h"
#include "chain/search/bucket_queue.h"

#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <boost/graph/filtered_graph.hpp>
#include <boost/property_map/function_property_map.hpp>

#include <algorithm>
#include <functional>
#include <utility>

namespace riserun::chain {

namespace {

using VertexIndex = boost::typed_identity_property_map<std::uint32_t>;

/// A value for each vertex, as a property map. The values must outlive it.
template <class T>
auto by_vertex(std::vector<T>& values) {
  return boost::make_iterator_property_map(values.data(), VertexIndex());
}

/// One for each vertex: quicker than two bits each, which is what Boost makes by itself.
using Colors = std::vector<boost::default_color_type>;

template <class Edge, class WeightOf>
auto weights(WeightOf weight_of) {
  return boost::make_function_property_map<RowEdge<Edge>>(
      [=](const RowEdge<Edge>& edge) -> decltype(auto) { return weight_of(*edge.edge); });
}

/// For the bucket queue: takes over what is less, and queues again what has come to fewer steps.
template <class Queue, class Distance, class Weight, class StepsOf>
class Relaxing : public boost::default_bfs_visitor {
 public:
  Relaxing(Queue& queue, Distance distance, Weight weight, StepsOf steps_of)
      : queue_(queue), distance_(distance), weight_(weight), steps_of_(steps_of) {}

  template <class Edge, class Graph>
  void tree_edge(const Edge& edge, const Graph& graph) {
    relax(edge, graph);
  }
  template <class Edge, class Graph>
  void gray_target(const Edge& edge, const Graph& graph) {
    const auto before = steps_of_(target(edge, graph));
    if (relax(edge, graph) && steps_of_(target(edge, graph)) != before) queue_.push(target(edge, graph));
  }

 private:
  // Boost's relax_target compares twice, for floating-point numbers in registers.
  template <class Edge, class Graph>
  bool relax(const Edge& edge, const Graph& graph) {
    const auto farther = distance_[source(edge, graph)] + get(weight_, edge);
    if (!(farther < distance_[target(edge, graph)])) return false;
    distance_[target(edge, graph)] = farther;
    return true;
  }

  Queue& queue_;
  Distance distance_;
  Weight weight_;
  StepsOf steps_of_;
};

/// @param sources    each once
/// @param distances  in: those of the sources, of the rest what is farther than any
/// @param steps_of   steps_of(distance): its whole steps; no edge adds less than one, or nothing else is compared
template <class Graph, class T, class Weight, class StepsOf>
void settle_by_steps(const Graph& graph, const std::vector<std::uint32_t>& sources, std::vector<T>& distances,
                     Weight weight, StepsOf steps_of) {
  const auto steps = [&](std::uint32_t vertex) { return static_cast<std::size_t>(steps_of(distances[vertex])); };
  BucketQueue queue(steps);
  Colors colors(distances.size(), boost::white_color);
  boost::breadth_first_visit(graph, sources.begin(), sources.end(), queue,
                             Relaxing(queue, by_vertex(distances), weight, steps), by_vertex(colors));
}

/// The same by Dijkstra's algorithm.
template <class Graph, class T, class Weight>
void settle_by_cost(const Graph& graph, const std::vector<std::uint32_t>& sources, std::vector<T>& distances,
                    Weight weight) {
  Colors colors(distances.size(), boost::white_color);
  boost::dijkstra_shortest_paths_no_init(graph, sources.begin(), sources.end(), boost::dummy_property_map(),
                                         by_vertex(distances), weight, VertexIndex(), std::less<>(), std::plus<>(), T{},
                                         boost::dijkstra_visitor<>(), by_vertex(colors));
}

/// Puts the sources' costs in; the sources, each once.
std::vector<std::uint32_t> put_sources(std::span<const DistanceSource> sources, std::vector<Cost>& distances) {
  std::vector<std::uint32_t> starts;
  for (const DistanceSource& source : sources) {
    Cost& known = distances[source.vertex];
    if (known == kUnreachable) starts.push_back(source.vertex);
    known = std::min(known, source.cost);
  }
  return starts;
}

template <class Edge, class Graph>
std::vector<Cost> least_costs_in(const Graph& graph, std::size_t vertex_count, std::span<const DistanceSource> sources,
                                 bool small_steps) {
  std::vector<Cost> distances(vertex_count, kUnreachable);
  const std::vector<std::uint32_t> starts = put_sources(sources, distances);
  const auto weight = weights<Edge>([](const Edge& edge) -> const Cost& { return edge.cost; });
  if (small_steps)
    settle_by_steps(graph, starts, distances, weight, [](const Cost& cost) { return cost.tuple[1]; });
  else
    settle_by_cost(graph, starts, distances, weight);
  return distances;
}

/// Edges that leave the progress of a chain as it is.
struct LeavesProgress {
  const Rules* rules = nullptr;
  Progress progress;
  bool operator()(const RowEdge<InEdge>& edge) const {
    return !may_change(progress, *edge.edge) || after(*rules, progress, *edge.edge) == progress;
  }
};

/// The rows as they are, or without the edges that are not kept.
template <class Visit>
void visit_kept(const RowGraph<InEdge>& graph, const std::optional<LeavesProgress>& kept, Visit visit) {
  if (kept)
    visit(boost::filtered_graph<RowGraph<InEdge>, LeavesProgress>(graph, *kept));
  else
    visit(graph);
}

/// Each place of the cost by itself: each the least of some way, not all of one way.
std::vector<Cost> least_of_each(const TransposedGraph& graph, std::span<const DistanceSource> sources,
                                const std::optional<LeavesProgress>& kept) {
  std::vector<Cost> distances(graph.in_edges().vertex_count(), kUnreachable);
  std::vector<std::uint32_t> starts;
  std::vector<std::int64_t> least;
  for (std::size_t place = 0; place < Cost{}.tuple.size(); ++place) {
    const bool merged = graph.is_merged() && place != kHeadPlace;
    const RowGraph<InEdge>& rows = merged ? graph.merged() : graph.in_edges();
    const auto row = [&](std::uint32_t node) { return merged ? graph.merged_row(node) : node; };
    least.assign(rows.vertex_count(), kFar);
    starts.clear();
    for (const DistanceSource& source : sources) {
      std::int64_t& known = least[row(source.vertex)];
      if (known == kFar) starts.push_back(row(source.vertex));
      known = std::min(known, source.cost.tuple[place]);
    }
    const auto weight = weights<InEdge>([place](const InEdge& edge) { return edge.cost.tuple[place]; });
    visit_kept(rows, kept, [&](const auto& seen) { settle_by_cost(seen, starts, least, weight); });
    for (std::uint32_t node = 0; node < distances.size(); ++node) distances[node].tuple[place] = least[row(node)];
  }
  return distances;
}

std::vector<Cost> least_or_each(const PortGraph& graph, std::span<const DistanceSource> sources,
                                const std::optional<LeavesProgress>& kept) {
  const TransposedGraph& transposed = graph.transposed();
  if (graph.all_measures()) return least_of_each(transposed, sources, kept);
  const RowGraph<InEdge>& rows = transposed.in_edges();
  std::vector<Cost> distances;
  visit_kept(rows, kept, [&](const auto& seen) {
    distances = least_costs_in<InEdge>(seen, rows.vertex_count(), sources, transposed.has_small_steps());
  });
  return distances;
}

}  // namespace

std::vector<Cost> least_costs(const RowGraph<CostEdge>& graph, std::span<const DistanceSource> sources) {
  return least_costs_in<CostEdge>(graph, graph.vertex_count(), sources, false);
}

std::vector<int> fewest_steps(const RowGraph<StepEdge>& graph, std::span<const std::uint32_t> sources) {
  std::vector<int> steps(graph.vertex_count(), kNoWay);
  std::vector<std::uint32_t> starts;
  for (const std::uint32_t source : sources)
    if (std::exchange(steps[source], 0) != 0) starts.push_back(source);
  settle_by_steps(graph, starts, steps, weights<StepEdge>([](const StepEdge& edge) { return edge.steps; }),
                  [](int count) { return count; });
  return steps;
}

std::vector<Cost> distances_to_goal(const PortGraph& graph, const Rules& rules, const PortEnd& goal) {
  std::vector<DistanceSource> sources;
  for (const GoalJoint& last : graph.last_joints(rules, goal)) sources.push_back({last.node, last.joint.cost});
  return least_or_each(graph, sources, {});
}

Potentials::Potentials(const PortGraph& graph, const Rules& rules, const std::vector<Cost>& to_goal)
    : graph_(graph),
      rules_(rules),
      to_goal_(to_goal),
      nothing_asked_(rules.need_groups().empty() && rules.closing() == Closing::none) {}

// The last joint where nothing else is left to do, and each arc that gets something done.
std::vector<DistanceSource> Potentials::sources(Progress progress) {
  std::vector<DistanceSource> sources;
  if (rules_.satisfied(progress.met)) {
    for (const GoalJoint& last : graph_.last_joints(rules_, rules_.request().to))
      if (progress.closed || last.joint.closes) sources.push_back({last.node, last.joint.cost});
  }
  const RowGraph<InEdge>& in_edges = graph_.transposed().in_edges();
  for (std::uint32_t node = 0; node < in_edges.vertex_count(); ++node) {
    for (const InEdge& edge : in_edges.out_of(node)) {
      if (!may_change(progress, edge)) continue;
      const std::optional<Progress> then = after(rules_, progress, edge);
      if (!then || *then == progress) continue;
      const Cost& onward = from(node, *then);
      if (onward != kUnreachable) sources.push_back({edge.to, edge.cost + onward});
    }
  }
  return sources;
}

std::vector<Cost> Potentials::work_out(Progress progress) {
  return least_or_each(graph_, sources(progress), LeavesProgress{&rules_, progress});
}

}  // namespace riserun::chain
