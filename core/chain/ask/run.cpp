#include "chain/ask/run.h"

#include <algorithm>

namespace riserun::chain {

namespace {

std::size_t joint_onto(const Run& run, bool to_end, std::size_t outer) {
  const auto joint = std::find_if(run.joints.begin(), run.joints.end(),
                                  [&](const RunJoint& j) { return j.to_end == to_end && j.outer == outer; });
  return static_cast<std::size_t>(joint - run.joints.begin());
}

/// Numbers parts and joints as they stand in a row; what led on elsewhere is aside.
void renumber(Chain& way) {
  for (std::size_t row = 0; row < way.joints.size(); ++row) {
    RunJoint& joint = way.joints[row];
    joint.to_end = row == way.parts.size();
    joint.inner = row == 0 ? kBase : row - 1;
    joint.outer = joint.to_end ? 0 : row;
    if (row == 0) continue;
    for (Follower& follower : way.parts[row - 1].ports)
      if (follower.leads_on()) follower.what = Follower::What::aside;
    way.parts[row - 1].ports[joint.inner_port] = {joint.to_end ? Follower::What::end : Follower::What::part,
                                                  joint.outer, PartId{}, false};
  }
}

}  // namespace

std::uint8_t RunPart::leave() const {
  const auto port = std::find_if(ports.begin(), ports.end(), [](const Follower& at) { return at.leads_on(); });
  return static_cast<std::uint8_t>(port - ports.begin());
}

std::vector<Follower> RunPart::plugs() const {
  std::vector<Follower> found;
  std::copy_if(ports.begin(), ports.end(), std::back_inserter(found),
               [](const Follower& at) { return at.what == Follower::What::plug; });
  return found;
}

Chain way_to(const Run& run, std::size_t end) {
  Chain way;
  way.base = run.base;
  way.ends = {run.ends[end]};
  std::size_t at = joint_onto(run, true, end);
  way.joints.push_back(run.joints[at]);
  while (run.joints[at].inner != kBase) {
    const std::size_t row = run.joints[at].inner;
    way.parts.push_back(run.parts[row]);
    at = joint_onto(run, false, row);
    way.joints.push_back(run.joints[at]);
  }
  std::reverse(way.parts.begin(), way.parts.end());
  std::reverse(way.joints.begin(), way.joints.end());
  renumber(way);
  return way;
}

Chain turned_round(Chain way) {
  std::swap(way.base, way.ends.front().port);
  std::vector<std::uint8_t> entered;
  for (RunPart& link : way.parts) {
    const std::uint8_t leave = link.leave();
    std::swap(link.ports[link.enter], link.ports[leave]);
    entered.push_back(link.enter);
    link.enter = leave;
  }
  std::reverse(way.parts.begin(), way.parts.end());
  std::reverse(way.joints.begin(), way.joints.end());
  for (RunJoint& joint : way.joints) std::swap(joint.a, joint.b);
  for (std::size_t row = 0; row < way.parts.size(); ++row)
    way.joints[row + 1].inner_port = entered[entered.size() - 1 - row];
  renumber(way);
  return way;
}

}  // namespace riserun::chain
