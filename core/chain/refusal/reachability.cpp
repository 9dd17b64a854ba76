#include "chain/refusal/reachability.h"

#include "chain/search/potentials.h"

#include <algorithm>

namespace riserun::chain {

namespace {

/// Fewest parts to each port type, as a list: nearest first.
class Nearest {
 public:
  explicit Nearest(std::size_t type_count) : hops_(type_count, kNoWay) {}
  void reach(PortTypeId type, int hops) { hops_[type.row] = std::min(hops_[type.row], hops); }
  std::vector<PortTypeId> list() const {
    std::vector<PortTypeId> types;
    for (std::uint32_t row = 0; row < hops_.size(); ++row)
      if (hops_[row] != kNoWay) types.push_back({row});
    std::stable_sort(types.begin(), types.end(),
                     [&](PortTypeId a, PortTypeId b) { return hops_[a.row] < hops_[b.row]; });
    return types;
  }

 private:
  std::vector<int> hops_;
};

/// By node: parts to it beyond those that lead to the front; kNoWay where there is no way. Backwards: parts from it on.
std::vector<int> hops_from(const PortGraph& graph, const std::vector<std::uint32_t>& front, bool backwards) {
  const auto node_count = static_cast<std::uint32_t>(graph.nodes().size());
  const RowGraph<StepEdge> links(node_count, [&](auto emit) {
    for (std::uint32_t node = 0; node < node_count; ++node)
      for (const Arc& arc : graph.arcs(node))
        backwards ? emit(arc.to, StepEdge{node, 1}) : emit(node, StepEdge{arc.to, 1});
  });
  return fewest_steps(links, front);
}

}  // namespace

std::vector<PortTypeId> reachable_from(const Rules& rules, const PortGraph& graph) {
  std::vector<std::uint32_t> front;
  for (const Arc& arc : graph.arcs_from(rules, rules.request().from)) front.push_back(arc.to);
  const std::vector<int> hops = hops_from(graph, front, false);
  Nearest nearest(rules.catalog().port_types().size());
  for (std::size_t node = 0; node < hops.size(); ++node)
    if (hops[node] != kNoWay) nearest.reach(graph.nodes()[node].type, hops[node]);
  return nearest.list();
}

std::vector<PortTypeId> reachable_to(const Rules& rules, const PortGraph& graph) {
  std::vector<std::uint32_t> front;
  for (std::uint32_t node = 0; node < graph.nodes().size(); ++node)
    if (graph.last_joint(rules, graph.nodes()[node], rules.request().to)) front.push_back(node);
  const std::vector<int> hops = hops_from(graph, front, true);
  Nearest nearest(rules.catalog().port_types().size());
  for (std::size_t move = 0; move < graph.moves().size(); ++move)
    if (const int known = hops[graph.target(move)]; known != kNoWay)
      nearest.reach(graph.moves()[move].enter_type, known);
  return nearest.list();
}

quantity::Facts look_alike_traps(const Catalog& catalog, const ChainRequest& request,
                                 const std::vector<PortTypeId>& from_side, const std::vector<PortTypeId>& to_side) {
  std::vector<const catalog::LookAlike*> seen;
  quantity::Facts traps;
  const auto look = [&](PortTypeId a, PortTypeId b) {
    const catalog::LookAlike* trap = catalog.look_alike(catalog.port_type(a), catalog.port_type(b));
    if (!trap || std::find(seen.begin(), seen.end(), trap) != seen.end()) return;
    seen.push_back(trap);
    traps.push_back(quantity::fact("never_join", catalog.written(a), catalog.written(b), trap->reason));
  };
  look(request.from.type, request.to.type);
  // Beyond the two ends themselves only what would start to screw together is a trap.
  const auto opposite = [&](PortTypeId a, PortTypeId b) {
    return catalog.port_type(a).end != catalog.port_type(b).end;
  };
  for (const PortTypeId open : from_side)
    if (opposite(open, request.to.type)) look(open, request.to.type);
  for (const PortTypeId open : to_side)
    if (opposite(request.from.type, open)) look(request.from.type, open);
  return traps;
}

}  // namespace riserun::chain
