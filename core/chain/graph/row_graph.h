// A graph's arcs turned around, kept by the end that they lead to, for exact distances to a goal (Dijkstra's
// algorithm).
#pragma once

#include "chain/part/measures.h"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <limits>
#include <queue>
#include <span>
#include <utility>
#include <vector>

namespace riserun::chain {

struct Arc;

/// Beyond any sum of a chain, and four times as much is still a number.
inline constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max() / 4;
inline constexpr Cost kUnreachable{{kFar, kFar, kFar, kFar, kFar}};

/// An open end, and what it costs from there to the goal at first sight.
struct DistanceSource {
  std::uint32_t node = 0;
  Cost cost;
};

/// An arc by the end that it comes from, with what a search must know of its move.
struct InEdge {
  std::uint32_t from = 0;
  std::uint8_t groups = 0;
  bool only_for_need = false;
  bool closes = false;
  Cost cost;
};

class Reversed {
 public:
  Reversed() = default;
  /// @param first_arc  by node: first row in `arcs`, and the end
  /// @param alike      by node: nodes with the same number have the same arcs out, but for the place of the cost that
  ///                   tells bores apart; empty where that is not so
  Reversed(std::span<const std::uint32_t> first_arc, std::span<const Arc> arcs, std::vector<std::uint32_t> alike);

  std::uint32_t node_count() const { return backs_.node_count(); }
  std::span<const InEdge> into(std::uint32_t node) const { return backs_.into(node); }
  /// Least cost from each node to the goal over the arcs that keep(back) says yes to; kUnreachable where there is no
  /// way.
  template <class Keep>
  std::vector<Cost> least(std::span<const DistanceSource> sources, Keep keep) const {
    return steps_ ? least_by_steps(sources, keep) : least_by_cost(sources, keep);
  }
  /// The same for each place of the cost by itself: each the least of some way, not all of one way.
  template <class Keep>
  std::vector<Cost> least_of_each(std::span<const DistanceSource> sources, Keep keep) const;

 private:
  /// Arcs by the node that they lead to.
  struct Lists {
    std::vector<std::uint32_t> first{0};  // by node: first row in `backs`, and the end
    std::vector<InEdge> backs;
    std::uint32_t node_count() const { return static_cast<std::uint32_t>(first.size() - 1); }
    std::span<const InEdge> into(std::uint32_t node) const {
      return std::span(backs).subspan(first[node], first[node + 1] - first[node]);
    }
  };
  void merge_alike();
  template <class Keep>
  std::vector<Cost> least_by_steps(std::span<const DistanceSource> sources, Keep keep) const;
  template <class Keep>
  std::vector<Cost> least_by_cost(std::span<const DistanceSource> sources, Keep keep) const;
  template <class Keep>
  static void least_of_place(const Lists& lists, std::size_t place, std::vector<std::int64_t>& distances, Keep keep);

  Lists backs_;
  bool steps_ = false;                // the first place of all costs is 0, and the second a small number above 0
  std::vector<std::uint32_t> alike_;  // by node: its row in `merged_`; empty: there is none
  Lists merged_;                      // nodes that are alike as one, parallel arcs as one: each place the least
};

// Where every arc takes at least one step, all nodes of as many steps are settled together: no heap is needed.
template <class Keep>
std::vector<Cost> Reversed::least_by_steps(std::span<const DistanceSource> sources, Keep keep) const {
  std::vector<Cost> distances(node_count(), kUnreachable);
  std::vector<std::vector<std::uint32_t>> by_steps;
  const auto reach = [&](std::uint32_t node, const Cost& cost) {
    if (!(cost < distances[node])) return;
    const auto steps = static_cast<std::size_t>(cost.tuple[1]);
    const bool listed = distances[node].tuple[1] == cost.tuple[1];
    distances[node] = cost;
    if (listed) return;
    if (by_steps.size() <= steps) by_steps.resize(steps + 1);
    by_steps[steps].push_back(node);
  };
  for (const DistanceSource& source : sources) reach(source.node, source.cost);
  for (std::size_t steps = 0; steps < by_steps.size(); ++steps) {
    for (std::size_t i = 0; i < by_steps[steps].size(); ++i) {
      const std::uint32_t node = by_steps[steps][i];
      const Cost cost = distances[node];
      if (cost.tuple[1] != static_cast<std::int64_t>(steps)) continue;
      for (const InEdge& back : into(node))
        if (keep(back)) reach(back.from, cost + back.cost);
    }
  }
  return distances;
}

template <class Keep>
std::vector<Cost> Reversed::least_by_cost(std::span<const DistanceSource> sources, Keep keep) const {
  std::vector<Cost> distances(node_count(), kUnreachable);
  using Entry = std::pair<Cost, std::uint32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  const auto reach = [&](std::uint32_t node, const Cost& cost) {
    if (!(cost < distances[node])) return;
    distances[node] = cost;
    open.emplace(cost, node);
  };
  for (const DistanceSource& source : sources) reach(source.node, source.cost);
  while (!open.empty()) {
    const auto [cost, node] = open.top();
    open.pop();
    if (cost != distances[node]) continue;
    for (const InEdge& back : into(node))
      if (keep(back)) reach(back.from, cost + back.cost);
  }
  return distances;
}

/// @param distances  in: those of the sources, the rest kFar
template <class Keep>
void Reversed::least_of_place(const Lists& lists, std::size_t place, std::vector<std::int64_t>& distances, Keep keep) {
  using Entry = std::pair<std::int64_t, std::uint32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  for (std::uint32_t node = 0; node < distances.size(); ++node)
    if (distances[node] < kFar) open.emplace(distances[node], node);
  while (!open.empty()) {
    const auto [weight, node] = open.top();
    open.pop();
    if (weight != distances[node]) continue;
    for (const InEdge& back : lists.into(node)) {
      const std::int64_t further = weight + back.cost.tuple[place];
      if (further >= distances[back.from] || !keep(back)) continue;
      distances[back.from] = further;
      open.emplace(further, back.from);
    }
  }
}

template <class Keep>
std::vector<Cost> Reversed::least_of_each(std::span<const DistanceSource> sources, Keep keep) const {
  std::vector<Cost> distances(node_count(), kUnreachable);
  for (std::size_t place = 0; place < Cost{}.tuple.size(); ++place) {
    const bool merged = !alike_.empty() && place != kHeadPlace;
    const Lists& lists = merged ? merged_ : backs_;
    const auto row = [&](std::uint32_t node) { return merged ? alike_[node] : node; };
    std::vector<std::int64_t> least(lists.node_count(), kFar);
    for (const DistanceSource& source : sources)
      least[row(source.node)] = std::min(least[row(source.node)], source.cost.tuple[place]);
    least_of_place(lists, place, least, keep);
    for (std::uint32_t node = 0; node < distances.size(); ++node) distances[node].tuple[place] = least[row(node)];
  }
  return distances;
}

}  // namespace riserun::chain
