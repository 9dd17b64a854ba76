#include "plan/stage/rig_upright.h"

#include "plan/stage/mounting.h"
#include "plan/way.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace riserun::plan {

namespace {

using chain::Follower;
using chain::Run;
using chain::RunJoint;

RunJoint* joint_of_end(Run& run, std::size_t end) {
  const auto found = std::find_if(run.joints.begin(), run.joints.end(),
                                  [&](const RunJoint& joint) { return joint.to_end && joint.outer == end; });
  return found == run.joints.end() ? nullptr : &*found;
}

/// Two ends that stand in one part change their openings; the steps go with what is screwed in.
void change_round(Run& run, std::size_t one, std::size_t other) {
  RunJoint& a = *joint_of_end(run, one);
  RunJoint& b = *joint_of_end(run, other);
  std::vector<Follower>& ports = run.parts[a.inner].ports;
  std::swap(ports[a.inner_port], ports[b.inner_port]);
  std::swap(a.outer, b.outer);
  const auto row_a = static_cast<std::size_t>(&a - run.joints.data());
  const auto row_b = static_cast<std::size_t>(&b - run.joints.data());
  for (chain::BuildStep& step : run.steps)
    if (step.joint == row_a)
      step.joint = row_b;
    else if (step.joint == row_b)
      step.joint = row_a;
}

bool is_upright(const Inputs& inputs, const JobPort& port, const Run& run) {
  return can_end_upright(inputs, port.name, chain::way_to(run, kReliefOfRig));
}

/// Row of the last part on the valve's way that turns it aside.
std::optional<std::size_t> last_that_turns(const Inputs& inputs, Run& run) {
  constexpr double kPlumb = 1.0;  // degrees that count as none
  const RunJoint* joint = joint_of_end(run, kReliefOfRig);
  while (joint != nullptr && joint->inner != chain::kBase) {
    const chain::RunPart& link = run.parts[joint->inner];
    const catalog::Part& part = inputs.catalog.part(link.part);
    if (turn_between(part, link.enter, joint->inner_port) >= kPlumb) return joint->inner;
    const std::size_t row = joint->inner;
    const auto before = std::find_if(run.joints.begin(), run.joints.end(),
                                     [&](const RunJoint& each) { return !each.to_end && each.outer == row; });
    joint = before == run.joints.end() ? nullptr : &*before;
  }
  return std::nullopt;
}

}  // namespace

Fact stand_relief_upright(const Inputs& inputs, const JobPort& port, Run& rig) {
  for (std::size_t other = 0; other < rig.ends.size() && !is_upright(inputs, port, rig); ++other) {
    const RunJoint* of_valve = joint_of_end(rig, kReliefOfRig);
    const RunJoint* of_other = joint_of_end(rig, other);
    if (other == kReliefOfRig || of_other == nullptr || of_other->inner == chain::kBase ||
        of_other->inner != of_valve->inner || of_other->a != of_valve->a || of_other->b != of_valve->b)
      continue;
    change_round(rig, kReliefOfRig, other);
    if (!is_upright(inputs, port, rig)) change_round(rig, kReliefOfRig, other);
  }
  const RunJoint* joint = joint_of_end(rig, kReliefOfRig);
  if (joint == nullptr || joint->inner == chain::kBase) return fact("rig_relief_on_the_port");
  const auto name = [&](std::size_t row) { return inputs.catalog.part(rig.parts[row].part).name; };
  const auto number = [](std::size_t row) { return static_cast<int>(row) + 1; };
  if (!is_upright(inputs, port, rig)) return fact("rig_relief_on_an_elbow", number(joint->inner), name(joint->inner));
  const auto turns = last_that_turns(inputs, rig);
  if (!turns) return fact("rig_relief_straight_on", number(joint->inner), name(joint->inner));
  return fact("rig_relief_turned_up", number(*turns), name(*turns));
}

}  // namespace riserun::plan
