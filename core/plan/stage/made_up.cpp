#include "plan/stage/made_up.h"

#include <algorithm>
#include <numeric>

namespace riserun::plan {

namespace {

using chain::Freedom;

bool is_held(const chain::PortEnd& end) { return end.freedom == Freedom::fixed || end.freedom == Freedom::sliding; }

}  // namespace

MadeUp::MadeUp(const chain::Run& run) : run_(run), group_(1 + run.parts.size() + run.ends.size()) {
  std::iota(group_.begin(), group_.end(), std::size_t{0});
  held_.assign(group_.size(), false);
  held_[0] = is_held(run.base);
  for (std::size_t end = 0; end < run.ends.size(); ++end)
    held_[1 + run.parts.size() + end] = !run.ends[end].device && is_held(run.ends[end].port);
}

bool MadeUp::made_in_place(const chain::BuildStep& step) {
  if (step.joint == chain::kNoJoint) return false;
  if (step.joint == run_.joints.size()) return stands(1 + step.row);
  const chain::RunJoint& joint = run_.joints[step.joint];
  const std::size_t inner = joint.inner == chain::kBase ? 0 : 1 + joint.inner;
  const std::size_t outer = 1 + joint.outer + (joint.to_end ? run_.parts.size() : 0);
  const bool in_place = stands(inner) || stands(outer);
  std::replace(group_.begin(), group_.end(), std::size_t{group_[outer]}, std::size_t{group_[inner]});
  return in_place;
}

bool MadeUp::stands(std::size_t body) const {
  for (std::size_t other = 0; other < group_.size(); ++other)
    if (group_[other] == group_[body] && held_[other]) return true;
  return false;
}

}  // namespace riserun::plan
