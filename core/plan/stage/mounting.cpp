#include "plan/stage/mounting.h"

#include "plan/job/facing.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace riserun::plan {

namespace {

using catalog::CheckKind;

std::optional<Facing> axis_of_port(const Job& job, const std::string& name) {
  const JobPort* port = find_port(job, name);
  return port != nullptr ? axis_of(*port) : std::nullopt;
}

bool is_swing_check(const Catalog& catalog, PartId part) {
  return catalog.family(catalog.part(part).family).check == CheckKind::swing;
}

/// By how much the way through a part turns aside; nothing: it bends as it likes.
std::optional<double> turn_through(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  if (part.flexible || catalog.family(part.family).flexible) return std::nullopt;
  return turn_between(part, link.enter, link.leave());
}

/// The part's axis from the port on, in the sense that leads away from the port; nothing: not known. A quarter turn out
/// of an upright run is flat, whichever way it points; out of a flat one it may rise or fall.
std::optional<Facing> beyond(const Catalog& catalog, Facing axis, const chain::RunPart& link) {
  const std::optional<double> turn = turn_through(catalog, link);
  if (!turn) return std::nullopt;
  if (*turn < 1.0) return axis;
  if (axis != Facing::aside && std::abs(*turn - 90.0) < 1.0) return Facing::aside;
  return std::nullopt;
}

/// Swing checks on a way whose flow is known to run down through them. The parts stand from the port on, each with
/// whether its arrow leads away from the port.
struct Step {
  const chain::RunPart* link;
  bool away;
};

void add_falling(const Catalog& catalog, const std::vector<Step>& steps, std::optional<Facing> axis,
                 std::set<PartId>& falling) {
  for (const Step& step : steps) {
    if (!axis) return;
    const int rise = static_cast<int>(*axis) * (step.away ? 1 : -1);
    if (is_swing_check(catalog, step.link->part) && rise < 0) falling.insert(step.link->part);
    axis = beyond(catalog, *axis, *step.link);
  }
}

/// Of all ways of the run, from both their ends.
std::set<PartId> falling_swing_checks(const Inputs& inputs, const ConnectionPlan& plan) {
  std::set<PartId> falling;
  const chain::Run& run = *plan.run();
  for (std::size_t end = 0; end < run.ends.size(); ++end) {
    const chain::Chain way = chain::way_to(run, end);
    std::vector<Step> steps;
    for (const chain::RunPart& link : way.parts) steps.push_back({&link, link.enter == 0});
    add_falling(inputs.catalog, steps, axis_of_port(inputs.job, plan.from), falling);
    std::reverse(steps.begin(), steps.end());
    for (Step& step : steps) step.away = !step.away;
    add_falling(inputs.catalog, steps, axis_of_port(inputs.job, plan.ends[end]), falling);
  }
  return falling;
}

/// Angles between the axis and straight up that the run can be turned to, in degrees.
struct Lean {
  double least;
  double most;
};

/// Beyond a part that turns the way by so much. As it is turned about the axis that it is screwed in on, the new axis
/// runs round a cone about the old one.
Lean leant_further(const Lean& before, double turn) {
  constexpr double kOver = 180.0;  // straight down
  const auto reaches = [&](double angle) { return before.least <= angle && angle <= before.most; };
  const double nearest = std::min(std::abs(before.least - turn), std::abs(before.most - turn));
  const double farthest = before.most + turn <= kOver ? before.most + turn : 2.0 * kOver - before.least - turn;
  return {reaches(turn) ? 0.0 : nearest, reaches(kOver - turn) ? kOver : farthest};
}

}  // namespace

bool can_end_upright(const Inputs& inputs, const std::string& base, const chain::Chain& way) {
  const JobPort* port = port_named(inputs.job.reservoir.ports, base);
  if (port == nullptr) return true;
  constexpr double kPlumb = 1.0;  // degrees that count as none
  const Place place = port->place.value_or(Place::lid);
  const double out = place == Place::lid ? 0.0 : place == Place::side ? 90.0 : 180.0;
  Lean lean{out, out};
  for (const chain::RunPart& link : way.parts) {
    const std::optional<double> turn = turn_through(inputs.catalog, link);
    if (!turn) return true;
    if (*turn >= kPlumb) lean = leant_further(lean, *turn);
  }
  return lean.least < kPlumb;
}

void keep_swing_checks_from_falling_flow(const Inputs& inputs, ConnectionPlan& plan) {
  const bool falls =
      axis_of_port(inputs.job, plan.from) == Facing::down || axis_of_port(inputs.job, plan.to) == Facing::up;
  if (!falls || plan.request.taken) return;
  const auto swings = [&](PartId part) { return is_swing_check(inputs.catalog, part); };
  for (const chain::Need& need : plan.request.needs) {
    const bool any = std::any_of(need.parts.begin(), need.parts.end(), swings);
    if (!any || std::all_of(need.parts.begin(), need.parts.end(), swings)) continue;
    plan.request.banned.resize(inputs.catalog.parts().size());
    for (const PartId part : need.parts)
      if (swings(part)) plan.request.banned[part.row] = true;
  }
}

void judge_mounting(const Inputs& inputs, const ConnectionPlan& plan, Remarks& remarks) {
  if (plan.run() == nullptr) return;
  for (const PartId part : falling_swing_checks(inputs, plan))
    remarks.refuse({Topic::connections,
                    fact("flow_falls_through_swing_check", plan.name, part_title(inputs.catalog, part)),
                    {},
                    fact("take_a_spring_check")});
}

}  // namespace riserun::plan
