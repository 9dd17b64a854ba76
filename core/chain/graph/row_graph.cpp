#include "chain/graph/row_graph.h"

#include "chain/graph/port_graph.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace riserun::chain {

namespace {

// Beyond it, lists by the number of steps would be longer than a heap is slow.
constexpr std::int64_t kMostSteps = 64;

bool is_small_step(const Cost& cost) { return cost.tuple[0] == 0 && cost.tuple[1] > 0 && cost.tuple[1] <= kMostSteps; }

auto key(const InEdge& back) { return std::tuple(back.from, back.groups, back.only_for_need, back.closes); }

}  // namespace

Reversed::Reversed(std::span<const std::uint32_t> first_arc, std::span<const Arc> arcs,
                   std::vector<std::uint32_t> alike)
    : steps_(std::all_of(arcs.begin(), arcs.end(), [](const Arc& arc) { return is_small_step(arc.cost); })),
      alike_(std::move(alike)) {
  backs_.first.assign(first_arc.size(), 0);
  backs_.backs.resize(arcs.size());
  for (const Arc& arc : arcs) ++backs_.first[arc.to + 1];
  std::partial_sum(backs_.first.begin(), backs_.first.end(), backs_.first.begin());
  std::vector<std::uint32_t> next(backs_.first.begin(), backs_.first.end() - 1);
  for (std::uint32_t node = 0; node + 1 < first_arc.size(); ++node)
    for (const Arc& arc : arcs.subspan(first_arc[node], first_arc[node + 1] - first_arc[node]))
      backs_.backs[next[arc.to]++] = {node, arc.groups, arc.only_for_need, arc.closes, arc.cost};
  if (!alike_.empty()) merge_alike();
}

void Reversed::merge_alike() {
  const std::uint32_t count = *std::max_element(alike_.begin(), alike_.end()) + 1;
  std::vector<std::vector<InEdge>> lists(count);
  for (std::uint32_t node = 0; node < node_count(); ++node) {
    for (InEdge back : into(node)) {
      back.from = alike_[back.from];
      lists[alike_[node]].push_back(back);
    }
  }
  merged_.first.assign(1, 0);
  for (std::vector<InEdge>& list : lists) {
    std::sort(list.begin(), list.end(), [](const InEdge& a, const InEdge& b) { return key(a) < key(b); });
    for (const InEdge& back : list) {
      const bool parallel = merged_.backs.size() > merged_.first.back() && key(merged_.backs.back()) == key(back);
      if (!parallel) merged_.backs.push_back(back);
      Cost& least = merged_.backs.back().cost;
      for (std::size_t place = 0; place < least.tuple.size(); ++place)
        least.tuple[place] = std::min(least.tuple[place], back.cost.tuple[place]);
    }
    merged_.first.push_back(static_cast<std::uint32_t>(merged_.backs.size()));
  }
}

}  // namespace riserun::chain
