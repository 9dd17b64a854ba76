#include "chain/graph/transposed_graph.h"

#include <algorithm>
#include <tuple>

namespace riserun::chain {

namespace {

// Beyond it, a bucket queue would be longer than a heap is slow.
constexpr std::int64_t kMostSteps = 64;

bool is_small_step(const Cost& cost) { return cost.tuple[0] == 0 && cost.tuple[1] > 0 && cost.tuple[1] <= kMostSteps; }

auto key(const InEdge& edge) { return std::tuple(edge.to, edge.groups, edge.only_for_need, edge.closes); }

}  // namespace

TransposedGraph::TransposedGraph(const RowGraph<Arc>& arcs, std::vector<std::uint32_t> alike)
    : in_edges_(arcs.vertex_count(),
                [&](auto emit) {
                  for (std::uint32_t node = 0; node < arcs.vertex_count(); ++node)
                    for (const Arc& arc : arcs.out_of(node)) emit(arc.to, InEdge{arc, node, arc.cost});
                }),
      has_small_steps_(std::all_of(arcs.edges().begin(), arcs.edges().end(),
                                   [](const Arc& arc) { return is_small_step(arc.cost); })),
      alike_(std::move(alike)) {
  if (!alike_.empty()) merge_alike();
}

void TransposedGraph::merge_alike() {
  const std::uint32_t count = *std::max_element(alike_.begin(), alike_.end()) + 1;
  std::vector<std::vector<InEdge>> rows(count);
  for (std::uint32_t node = 0; node < in_edges_.vertex_count(); ++node) {
    for (InEdge edge : in_edges_.out_of(node)) {
      edge.to = alike_[edge.to];
      rows[alike_[node]].push_back(edge);
    }
  }
  std::vector<std::uint32_t> first{0};
  std::vector<InEdge> edges;
  for (std::vector<InEdge>& row : rows) {
    std::sort(row.begin(), row.end(), [](const InEdge& a, const InEdge& b) { return key(a) < key(b); });
    for (const InEdge& edge : row) {
      const bool parallel = edges.size() > first.back() && key(edges.back()) == key(edge);
      if (!parallel) edges.push_back(edge);
      Cost& least = edges.back().cost;
      for (std::size_t place = 0; place < least.tuple.size(); ++place)
        least.tuple[place] = std::min(least.tuple[place], edge.cost.tuple[place]);
    }
    first.push_back(static_cast<std::uint32_t>(edges.size()));
  }
  merged_ = RowGraph<InEdge>(std::move(first), std::move(edges));
}

}  // namespace riserun::chain
