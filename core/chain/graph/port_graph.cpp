#include "chain/graph/port_graph.h"

#include <algorithm>

namespace riserun::chain {

PortGraph::PortGraph(std::shared_ptr<const GraphFrame> frame, const Rules& rules) : frame_(std::move(frame)) {
  if (keeps_the_line(rules.request().order) && !all_measures()) weigh_ports(rules);
  transposed_ = TransposedGraph(rows(), frame_->alike_but_for_bore());
}

void PortGraph::weigh_ports(const Rules& rules) {
  const Catalog& catalog = rules.catalog();
  const ChainRequest& request = rules.request();
  const RunEnds ends = run_ends(catalog, request);
  passing_.reserve(catalog.port_types().size());
  passing_inside_.reserve(catalog.port_types().size());
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    Measures measures;
    add_passing(catalog, ends, {row}, measures);
    passing_.push_back(cost_of(request.order, measures));
    add_inner_joint(catalog, ends, {row}, measures);
    passing_inside_.push_back(cost_of(request.order, measures));
  }
  const RowGraph<Arc>& bare = frame_->arcs();
  std::vector<std::uint32_t> first{0};
  std::vector<Arc> arcs;
  first.reserve(bare.vertex_count() + 1);
  arcs.reserve(bare.edges().size());
  for (std::uint32_t node = 0; node < bare.vertex_count(); ++node) {
    for (const Arc& arc : bare.out_of(node)) arcs.push_back(weighed(arc, passing_inside_));
    first.push_back(static_cast<std::uint32_t>(arcs.size()));
  }
  arcs_ = RowGraph<Arc>(std::move(first), std::move(arcs));
}

Arc PortGraph::weighed(Arc arc, const std::vector<Cost>& entering) const {
  if (passing_.empty()) return arc;
  const Move& move = moves()[arc.move];
  arc.cost = arc.cost + entering[move.enter_type.row] + passing_[move.leave_type.row];
  return arc;
}

std::vector<Arc> PortGraph::arcs_from(const Rules& rules, const PortEnd& open) const {
  std::vector<Arc> arcs;
  arcs.reserve(32);  // most ends take fewer kinds of part
  const Node start{open.type, open.material.value_or(MaterialId{}), 0, false};
  for (const catalog::Mate& mate : frame_->folded().catalog().mates(open.type))
    for (const std::uint32_t move : frame_->moves_entering(mate.other))
      if (const auto made = frame_->arc(rules, start, mate, move, 0)) arcs.push_back(weighed(*made, passing_));
  return arcs;
}

std::optional<LastJoint> PortGraph::last_joint(const Rules& rules, const Node& open, const PortEnd& goal) const {
  const std::span<const catalog::Mate> mates = frame_->folded().catalog().mates(open.type);
  const auto mate = std::find_if(mates.begin(), mates.end(), [&](const auto& m) { return m.other == goal.type; });
  if (mate == mates.end()) return std::nullopt;
  const catalog::MatingRule& rule = frame_->folded().catalog().mating_rules()[mate->rule];
  if (!may_join(rules, open.open_end(), open_end_of(goal), rule)) return std::nullopt;
  Measures measures;
  measures.micrometres = frame_->folded().insertion_micrometres(open.type) +
                         frame_->folded().insertion_micrometres(goal.type) -
                         frame_->folded().make_up_micrometres(open.type, *mate);
  return LastJoint{rules.joint_closes(rule, open.bow, Bow::none), frame_->cost(rules, measures)};
}

std::vector<GoalJoint> PortGraph::last_joints(const Rules& rules, const PortEnd& goal) const {
  std::vector<GoalJoint> joints;
  for (const catalog::Mate& mate : frame_->folded().catalog().mates(goal.type)) {
    const auto first = std::lower_bound(nodes().begin(), nodes().end(), mate.other,
                                        [](const Node& node, PortTypeId type) { return node.type < type; });
    for (auto node = first; node != nodes().end() && node->type == mate.other; ++node)
      if (const auto joint = last_joint(rules, *node, goal))
        joints.push_back({static_cast<std::uint32_t>(node - nodes().begin()), *joint});
  }
  return joints;
}

}  // namespace riserun::chain
