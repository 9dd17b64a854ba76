#include "chain/refusal/reachability.h"

#include "chain/graph/row_graph_traits.h"

#include <boost/graph/breadth_first_search.hpp>
#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

constexpr int kNotReached = -1;

/// Fewest parts to each port type, as a list: nearest first.
class Nearest {
 public:
  explicit Nearest(std::size_t type_count) : hops_(type_count, kNotReached) {}
  void reach(PortTypeId type, int hops) {
    int& known = hops_[type.row];
    if (known == kNotReached || hops < known) known = hops;
  }
  std::vector<PortTypeId> list() const {
    std::vector<PortTypeId> types;
    for (std::uint32_t row = 0; row < hops_.size(); ++row)
      if (hops_[row] != kNotReached) types.push_back({row});
    std::stable_sort(types.begin(), types.end(),
                     [&](PortTypeId a, PortTypeId b) { return hops_[a.row] < hops_[b.row]; });
    return types;
  }

 private:
  std::vector<int> hops_;
};

/// Parts that lead from the nodes in front to each node, which count as one; kNotReached: there is no way.
template <class Edge>
std::vector<int> parts_to_each(const RowGraph<Edge>& graph, std::vector<std::uint32_t> front) {
  using VertexIndex = boost::typed_identity_property_map<std::uint32_t>;
  std::sort(front.begin(), front.end());
  front.erase(std::unique(front.begin(), front.end()), front.end());
  std::vector<int> parts(graph.vertex_count(), kNotReached);
  for (const std::uint32_t node : front) parts[node] = 1;
  const auto distance = boost::make_iterator_property_map(parts.data(), VertexIndex());
  boost::queue<std::uint32_t> waiting;
  boost::breadth_first_visit(graph, front.begin(), front.end(), waiting,
                             boost::make_bfs_visitor(boost::record_distances(distance, boost::on_tree_edge())),
                             boost::two_bit_color_map<VertexIndex>(parts.size()));
  return parts;
}

}  // namespace

std::vector<PortTypeId> reachable_from(const Rules& rules, const PortGraph& graph) {
  std::vector<std::uint32_t> front;
  for (const Arc& arc : graph.arcs_from(rules, rules.request().from)) front.push_back(arc.to);
  const std::vector<int> parts = parts_to_each(graph.rows(), std::move(front));
  Nearest nearest(rules.catalog().port_types().size());
  for (std::size_t node = 0; node < parts.size(); ++node)
    if (parts[node] != kNotReached) nearest.reach(graph.nodes()[node].type, parts[node]);
  return nearest.list();
}

std::vector<PortTypeId> reachable_to(const Rules& rules, const PortGraph& graph) {
  std::vector<std::uint32_t> front;
  for (const GoalJoint& last : graph.last_joints(rules, rules.request().to)) front.push_back(last.node);
  const std::vector<int> parts = parts_to_each(graph.transposed().in_edges(), std::move(front));
  Nearest nearest(rules.catalog().port_types().size());
  for (std::size_t move = 0; move < graph.moves().size(); ++move)
    if (const int known = parts[graph.target(move)]; known != kNotReached)
      nearest.reach(graph.moves()[move].enter_type, known);
  return nearest.list();
}

std::vector<std::string> look_alike_traps(const Catalog& catalog, const ChainRequest& request,
                                          const std::vector<PortTypeId>& from_side,
                                          const std::vector<PortTypeId>& to_side) {
  std::vector<const catalog::LookAlike*> seen;
  std::vector<std::string> traps;
  const auto look = [&](PortTypeId a, PortTypeId b) {
    const catalog::LookAlike* trap = catalog.look_alike(catalog.port_type(a), catalog.port_type(b));
    if (!trap || std::find(seen.begin(), seen.end(), trap) != seen.end()) return;
    seen.push_back(trap);
    traps.push_back(fmt::format("never join {} and {}: {}", catalog.written(a), catalog.written(b), trap->reason));
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
