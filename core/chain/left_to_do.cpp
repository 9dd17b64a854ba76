#include "chain/left_to_do.h"

namespace riserun::chain {

LeftToDo::LeftToDo(const RequestGraph& graph, const Rules& rules, const std::vector<Cost>& to_goal)
    : graph_(graph),
      rules_(rules),
      to_goal_(to_goal),
      nothing_asked_(rules.need_groups().empty() && rules.closing() == Closing::none) {}

// The last joint where nothing else is left to do, and each arc that gets something done.
std::vector<Source> LeftToDo::sources(std::uint8_t met, bool closed) {
  std::vector<Source> sources;
  if (rules_.satisfied(met)) {
    for (const FirstSight& last : graph_.last_joints(rules_, rules_.request().to))
      if (closed || last.joint.closes) sources.push_back({last.node, last.joint.cost});
  }
  for (std::uint32_t node = 0; node < graph_.reversed().node_count(); ++node) {
    for (const Back& back : graph_.reversed().into(node)) {
      if (back.groups == 0 && (closed || !back.closes)) continue;
      const std::uint8_t then_met = rules_.advance(met, back.groups);
      if (then_met == met && (back.guest || closed || !back.closes)) continue;
      const Cost& onward = from(node, then_met, closed || back.closes);
      if (onward != kUnreachable) sources.push_back({back.from, back.cost + onward});
    }
  }
  return sources;
}

std::vector<Cost> LeftToDo::work_out(std::uint8_t met, bool closed) {
  const auto changes_nothing = [&](const Back& back) {
    return !back.guest && (closed || !back.closes) && (back.groups == 0 || rules_.advance(met, back.groups) == met);
  };
  const std::vector<Source> known = sources(met, closed);
  return graph_.all_measures() ? graph_.reversed().least_of_each(known, changes_nothing)
                               : graph_.reversed().least(known, changes_nothing);
}

}  // namespace riserun::chain
