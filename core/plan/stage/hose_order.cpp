#include "plan/stage/hose_order.h"

#include "chain/finder.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool stands_still(const chain::PortEnd& end) { return end.freedom == chain::Freedom::fixed; }

/// The joint that the build order makes last.
std::optional<std::size_t> last_joint(const chain::Run& run) {
  for (auto step = run.steps.rbegin(); step != run.steps.rend(); ++step)
    if (step->joint != chain::kNoJoint)
      return step->joint < run.joints.size() ? std::optional(step->joint) : std::nullopt;
  return std::nullopt;
}

/// The one hose that the joint holds.
std::optional<std::size_t> hose_at(const Catalog& catalog, const chain::Run& run, const chain::RunJoint& joint) {
  const auto is_hose = [&](std::size_t row) {
    return row < run.parts.size() && catalog.part(run.parts[row].part).flexible;
  };
  if (joint.inner != chain::kBase && is_hose(joint.inner)) return joint.inner;
  if (!joint.to_end && is_hose(joint.outer)) return joint.outer;
  return std::nullopt;
}

}  // namespace

std::optional<HoseOnLast> hose_on_last(const Catalog& catalog, const ConnectionPlan& connection) {
  const chain::Chain* run = connection.chain();
  if (run == nullptr || connection.ends_in || !stands_still(run->base) || !stands_still(run->ends.front().port))
    return std::nullopt;
  const auto last = last_joint(*run);
  if (!last || !is_clamped(catalog, run->joints[*last])) return std::nullopt;
  const auto row = hose_at(catalog, *run, run->joints[*last]);
  if (!row) return std::nullopt;
  const chain::RunPart& hose = run->parts[*row];
  const catalog::Part& part = catalog.part(hose.part);
  const auto length = hose.cut_length ? hose.cut_length : connection.hose_length;
  HoseOnLast found{*last, hose.part, length.value_or(straight_length(part)), run->joints[*last].make_up, false};
  for (const chain::RunJoint& joint : run->joints)
    if (is_clamped(catalog, joint) && hose_at(catalog, *run, joint) == row) found.free -= joint.make_up;
  found.free = std::max(found.free, metres(0.0));
  found.bends_on = chain::drawn_back_by_bowing(catalog, part, found.free) >= found.into;
  return found;
}

}  // namespace riserun::plan
