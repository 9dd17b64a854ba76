// Shortest distances to a goal, which bound what a chain still costs: the potentials of the searches.
//
// Distances are worked out backwards, on the transposed graph, from every place where the goal is one joint away. Where
// all costs are small whole steps, a breadth-first visit with a bucket queue settles them (Dial 1969); elsewhere
// Dijkstra's algorithm on the lexicographic cost, or on each measure by itself. Costs are those of part/measures.h:
// parts, cents, micrometres, nanometres of head.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/search_state.h"

#include <array>
#include <limits>
#include <memory>

namespace riserun::chain {

/// Beyond any sum of a chain, and four times as much is still a number.
inline constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max() / 4;
inline constexpr Cost kUnreachable{{kFar, kFar, kFar, kFar, kFar}};

/// A vertex to start from, and the least that it costs there.
struct DistanceSource {
  std::uint32_t vertex = 0;
  Cost cost;
};

/// An edge of a graph of costs.
struct CostEdge {
  std::uint32_t to = 0;
  Cost cost;
};

/// Least cost from the sources to each vertex; kUnreachable where there is no way. O(edges * log(vertices)).
/// @pre no cost is less than 0
std::vector<Cost> least_costs(const RowGraph<CostEdge>& graph, std::span<const DistanceSource> sources);

/// Fewest steps from the sources (vertices, and their own steps) to each vertex; kNoWay where there is no way.
/// O(edges + the greatest number).
struct StepEdge {
  std::uint32_t to = 0;
  int steps = 0;  // 0 or more
};
inline constexpr int kNoWay = 1 << 20;
std::vector<int> fewest_steps(const RowGraph<StepEdge>& graph, std::span<const std::uint32_t> sources);

/// Least cost from each node of the graph to the goal, whatever the needs and the closing joint; kUnreachable where
/// there is no way. With a graph of all measures each place is the least by itself: a bound, not a chain.
std::vector<Cost> distances_to_goal(const PortGraph& graph, const Rules& rules, const PortEnd& goal);

/// What a chain still costs at least from an open end on, given the needs that are met and whether it can be closed: a
/// bound that knows what the rest of the chain must hold, so that a search goes straight for it.
///
/// Exact but for the counts of the bin and a limit on parts. Worked out when first asked for, each set of needs met by
/// itself: from one set to a larger one lead the moves that meet a need. At worst 512 runs of Dijkstra's algorithm.
class Potentials {
 public:
  /// Keeps references to all three.
  Potentials(const PortGraph& graph, const Rules& rules, const std::vector<Cost>& to_goal);

  /// kUnreachable: from there the chain cannot be finished. With a graph of all measures each place is a bound by
  /// itself.
  const Cost& from(std::uint32_t node, Progress progress) { return layer(progress)[node]; }

 private:
  const std::vector<Cost>& layer(Progress progress) {
    if (nothing_asked_) return to_goal_;
    std::unique_ptr<const std::vector<Cost>>& known = layers_[progress.met * 2u + (progress.closed ? 1u : 0u)];
    if (!known) known = std::make_unique<const std::vector<Cost>>(work_out(progress));
    return *known;
  }
  std::vector<Cost> work_out(Progress progress);
  std::vector<DistanceSource> sources(Progress progress);

  const PortGraph& graph_;
  const Rules& rules_;
  const std::vector<Cost>& to_goal_;
  const bool nothing_asked_;
  std::array<std::unique_ptr<const std::vector<Cost>>, 512> layers_;
};

}  // namespace riserun::chain
