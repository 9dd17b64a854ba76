// Figures of the job that no device has: typed into the wrong field, or hoped for.
#include "plan/judge/dials.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace riserun::plan {

namespace {

using quantity::more_than;

void too_exact(const std::string& key, PressureDifference given, PressureDifference finest, Open& open) {
  if (!more_than(finest, given)) return;
  open.not_yet(Topic::whole_job, fact("no_device_is_so_exact", key, given, finest), {},
               fact("take_it_from_the_makers_sheet", key), "common practice");
}

/// What relief valve and walls must stand with a failed regulator is told by them.
void judge_exactness(const Plan& plan, const Settled& settled, Open& open) {
  const JobAir& air = plan.job.air;
  if (air.regulator_repeatability)
    too_exact("air.regulator repeatability", *air.regulator_repeatability,
              (settled.regulator_range - psig(0.0)) * kFinestRepeatability, open);
  if (air.lock_up) too_exact("air.lock up", *air.lock_up - psig(0.0), kFinestLockUp, open);
  if (plan.relief.valves.empty()) return;
  const auto by_opening = [](const ReliefValve& a, const ReliefValve& b) { return a.opens < b.opens; };
  const GaugePressure opens = std::min_element(plan.relief.valves.begin(), plan.relief.valves.end(), by_opening)->opens;
  const PressureDifference finest = (opens - psig(0.0)) * kFinestTolerance;
  const JobReliefValve& valve = plan.job.relief_valve;
  if (valve.tolerance) too_exact("relief valve.tolerance", *valve.tolerance, finest, open);
  if (valve.rise) too_exact("relief valve.rise", *valve.rise, finest, open);
}

/// What stands at the end of a run stands the reservoir's pressure too; the search looks at the parts before it alone.
void judge_devices(const Plan& plan, const Settled& settled, Open& open) {
  // What valves that are too small let it come to has its own finding.
  GaugePressure pressure = plan.transfer.setting;
  for (const ReliefValve& valve : plan.relief.valves)
    pressure = std::max(pressure, std::min(plan.relief.greatest, valve.full_flow));
  for (const Way& way : plan.ways) {
    if (!way.device || way.use == WayUse::feed) continue;
    const catalog::Part& device = plan.catalog->part(*way.device);
    if (!more_than(pressure, device.rating)) continue;
    Finding& finding =
        open.not_yet(Topic::connections, fact("device_not_rated", way.connection, device.name, device.rating, pressure),
                     Against{pressure, device.rating}, fact("device_that_stands", pressure), "worked out");
    const GaugePressure shown = plan.transfer.setting;
    if (way.use == WayUse::gauge)
      finding.mend = fact("gauge_that_shows_and_stands", scale_from(shown), scale_up_to(shown), pressure);
    std::vector<Mend> mends;
    for (const ReliefValve& valve : plan.relief.valves) {
      if (!mends.empty() || !quantity::at_most(pressure, std::max(valve.full_flow, plan.transfer.setting))) continue;
      mends = less_to_see(plan, settled, valve);
      auto sooner = mends.empty() ? closer_and_sooner_valve(plan, valve, device.rating) : std::nullopt;
      if (!sooner) continue;
      sooner->fact = fact("either_mend", quantity::Facts{std::move(sooner->fact), *finding.mend});
      mends.push_back(std::move(*sooner));
    }
    mend_first_by(std::move(mends), finding);
    if (way.use != WayUse::gauge) continue;
    // Of one that shows it badly, too, it is the one that is advised for that.
    const bool is_read = scale_shows(device.full_scale.value_or(psig(0.0)), shown);
    const auto gauge = is_read ? gauge_that_stands(*plan.catalog, shown, pressure, device.ports[0].type)
                               : gauge_to_buy(*plan.catalog, shown, pressure);
    if (gauge)
      finding.or_else.push_back(
          {fact("gauge_that_is_sold", plan.catalog->part(*gauge).name), {}, {{other_device(way, *gauge)}}});
  }
}

/// Of a compressor's plate, in another unit than it was written in: L/min and cfm differ 28 times.
void judge_delivery(const Plan& plan, Open& open) {
  const JobAir& air = plan.job.air;
  if (!air.delivery || !(*air.delivery > VolumeFlow())) return;
  if (more_than(kLeastDelivery, *air.delivery)) {
    open.not_yet(Topic::whole_job, fact("delivery_of_no_compressor", *air.delivery, kLeastDelivery), {},
                 fact("delivery_with_its_unit"), "common practice");
    return;
  }
  if (!air.receiver || !(*air.receiver > Volume())) return;
  const Time filled = *air.receiver / *air.delivery;
  if (!more_than(kFastestReceiver, filled)) return;
  open.not_yet(Topic::whole_job, fact("delivery_too_much_for_receiver", *air.delivery, *air.receiver), {},
               fact("delivery_with_its_unit"), "common practice");
}

}  // namespace

void judge_given_figures(const Plan& plan, const Settled& settled, Open& open) {
  judge_exactness(plan, settled, open);
  judge_delivery(plan, open);
  judge_devices(plan, settled, open);
  const auto& receiver = plan.job.air.receiver_pressure;
  if (receiver && more_than(kLowestReceiver, *receiver))
    open.not_yet(Topic::whole_job, fact("no_receiver_is_so_low", *receiver), {}, fact("read_the_receivers_own_gauge"),
                 "common practice");
}

}  // namespace riserun::plan
