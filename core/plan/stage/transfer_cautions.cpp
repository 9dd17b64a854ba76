#include "plan/stage/transfer_cautions.h"

#include "plan/judge/limits.h"

namespace riserun::plan {

namespace {

const Velocity kSlowWater = metres_per_second(5.0 * kMetresPerFoot);  // 5 ft/s in small pipe; handbooks ask 5 to 8

void caution_fast_water(const transfer::Fill& fill, Remarks& remarks) {
  for (const hydraulics::ElementLoss& loss : fill.losses_at_peak) {
    if (loss.velocity <= kSlowWater) continue;
    remarks.caution(Topic::transfer, fact("water_runs_fast", kSlowWater, loss.element),
                    "copper tube handbooks: 5 to 8 ft/s in small tube");
    break;
  }
}

/// What is counted as not drained has a finding of its own.
void caution_left_in_table(const TransferPlan& plan, const Levels& levels, Remarks& remarks) {
  const Volume went_up = plan.fill.volume;
  if (plan.fill.stop != transfer::Stop::goal_reached || plan.left_in_table <= went_up * kMuchLeftInTable ||
      plan.left_in_table > went_up * kMostLeftInTable)
    return;
  remarks.caution(
      Topic::whole_job,
      fact("much_stays_in_table", plan.left_in_table, went_up, levels.mouth_height.value_or(levels.inlet_height)),
      "worked out");
}

/// A wish is no demand, but where it stays one that is said.
void caution_missed_wish(const Wishes& wishes, const transfer::Fill& fill, Remarks& remarks) {
  constexpr double kNear = 1.05;
  if (!wishes.fill_time || fill.stop != transfer::Stop::goal_reached || fill.time <= *wishes.fill_time * kNear) return;
  remarks.caution(Topic::whole_job, fact("wish_not_met", *wishes.fill_time, fill.time), "worked out");
}

}  // namespace

void caution_time_and_rest(const Wishes& wishes, const Levels& levels, const TransferPlan& plan, Remarks& remarks) {
  caution_fast_water(plan.fill, remarks);
  caution_left_in_table(plan, levels, remarks);
  caution_missed_wish(wishes, plan.fill, remarks);
}

}  // namespace riserun::plan
