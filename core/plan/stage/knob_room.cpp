#include "plan/stage/knob_room.h"

#include "plan/judge/dials.h"
#include "plan/judge/limits.h"
#include "plan/stage/relief_valves.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

void leave_room_for_the_knob(const Inputs& inputs, const AirWays& air, TransferPlan& plan) {
  if (!plan.relief_stays_shut) return;
  const GaugePressure shut = *plan.relief_stays_shut;
  const PressureDifference gauge = least_dial_error(air.gauge_scales, shut);
  for (const PressureDifference off : {gauge + inputs.settled.regulator_repeatability, gauge}) {
    if (!quantity::at_most(plan.least_setting, within_limit(shut - off))) continue;
    plan.relief_stays_shut = shut - off;
    return;
  }
}

/// Of the setting that was chosen. More than half of what is left under a valve is for no regulator to come back to.
void find_knob_off(const Inputs& inputs, const AirWays& air, TransferPlan& plan) {
  plan.knob_off = least_dial_error(air.gauge_scales, plan.setting);
  const PressureDifference repeats = inputs.settled.regulator_repeatability;
  const auto is_fine = [&](const transfer::ReliefValve& valve) {
    return quantity::at_most(
        repeats,
        (valve.opens - inputs.job.relief_valve.tolerance.value_or(kCodeTolerance) - plan.setting) * kLargeShare);
  };
  if (std::all_of(air.relief.begin(), air.relief.end(), is_fine)) plan.knob_off = plan.knob_off + repeats;
}

}  // namespace riserun::plan
