#include "chain/search/potentials.h"

namespace riserun::chain {

Potentials::Potentials(const PortGraph& graph, const Rules& rules, const std::vector<Cost>& to_goal)
    : graph_(graph),
      rules_(rules),
      to_goal_(to_goal),
      nothing_asked_(rules.need_groups().empty() && rules.closing() == Closing::none) {}

// The last joint where nothing else is left to do, and each arc that gets something done.
std::vector<DistanceSource> Potentials::sources(std::uint8_t met, bool closed) {
  std::vector<DistanceSource> sources;
  if (rules_.satisfied(met)) {
    for (const GoalJoint& last : graph_.last_joints(rules_, rules_.request().to))
      if (closed || last.joint.closes) sources.push_back({last.node, last.joint.cost});
  }
  for (std::uint32_t node = 0; node < graph_.reversed().node_count(); ++node) {
    for (const InEdge& back : graph_.reversed().into(node)) {
      if (back.groups == 0 && (closed || !back.closes)) continue;
      const std::uint8_t then_met = rules_.advance(met, back.groups);
      if (then_met == met && (back.only_for_need || closed || !back.closes)) continue;
      const Cost& onward = from(node, then_met, closed || back.closes);
      if (onward != kUnreachable) sources.push_back({back.from, back.cost + onward});
    }
  }
  return sources;
}

std::vector<Cost> Potentials::work_out(std::uint8_t met, bool closed) {
  const auto changes_nothing = [&](const InEdge& back) {
    return !back.only_for_need && (closed || !back.closes) &&
           (back.groups == 0 || rules_.advance(met, back.groups) == met);
  };
  const std::vector<DistanceSource> known = sources(met, closed);
  return graph_.all_measures() ? graph_.reversed().least_of_each(known, changes_nothing)
                               : graph_.reversed().least(known, changes_nothing);
}

}  // namespace riserun::chain
