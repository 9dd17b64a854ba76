// How near to its setting the regulator is held: by what it comes back to, and by the gauge that its knob is set by.
#include "plan/judge/dials.h"
#include "plan/judge/knob_gauge.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

constexpr double kFinishAndHalf = 1.5;  // as a setting is worked out where nothing is in its way

/// On the next mark or half mark of a dial in tenths of a psi (common practice), whatever the units of the job.
GaugePressure on_the_dial(GaugePressure least) {
  const double step = in_pascals(psig(0.05));
  return gauge_pascals(std::ceil(in_pascals(least) / step) * step);
}

/// How far the setting is from what it must not be: from below, the pressure that just finishes the fill; from above,
/// where the table would run over if that is what stops the water, and where a relief valve blows.
PressureDifference room_around(const Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  const GaugePressure setting = plan.transfer.setting;
  PressureDifference room = setting - fill.pressure_to_finish;
  if (fill.walk_away == transfer::WalkAway::water_stops_below_rim && fill.self_limiting_pressure)
    room = std::min(room, *fill.self_limiting_pressure - setting);
  for (const ReliefValve& valve : plan.relief.valves) room = std::min(room, valve.opens - setting);
  return room;
}

/// A valve that opens at the setting itself leaves no room, whatever the last bits of the two are.
const PressureDifference kNoRoom = psi(1e-6);

/// Half way from what just finishes the fill to what it may not pass: there it may be off most to either side.
GaugePressure setting_with_room(const Plan& plan) {
  const TransferPlan& transfer = plan.transfer;
  GaugePressure most = std::min(transfer.highest_setting, plan.walls.four_to_one);
  if (transfer.relief_stays_shut) most = std::min(most, *transfer.relief_stays_shut);
  const GaugePressure half_way =
      gauge_pascals(0.5 * (in_pascals(transfer.fill.pressure_to_finish) + in_pascals(most)) * kAsPrinted);
  // On a mark it is the same however it is written.
  const GaugePressure mark = on_the_dial(half_way);
  return at_most(mark, most) ? mark : half_way;
}

/// Of a setting that is worked out and goes down for a relief valve: the next higher one that is sold, in walls as
/// they are and in such as stand it.
std::vector<Mend> higher_valves(const Plan& plan, const Settled& settled) {
  if (plan.transfer.setting_given || !plan.transfer.relief_stays_shut || plan.relief.valves.size() != 1) return {};
  const ReliefValve& valve = plan.relief.valves.front();
  const auto mark = relief_sold_above(*plan.catalog, valve.opens);
  if (!mark) return {};
  const Fact fact_of_it = fact("valve_that_opens_at", *mark);
  const Changes change = {{kReliefSetting, *mark}};
  std::vector<Mend> mends = {{fact_of_it, {}, {change}}};
  for (Mend& mend :
       with_too(stiffer_for_four(plan, settled, *mark + (valve.full_flow - valve.opens)), fact_of_it, change))
    mends.push_back(std::move(mend));
  return mends;
}

/// A setting that has more room; walls, or a relief valve, that let it be higher.
std::vector<Mend> more_room(const Plan& plan, const Settled& settled) {
  std::vector<Mend> mends;
  const GaugePressure higher = setting_with_room(plan);
  if (more_than(higher, plan.transfer.setting))
    mends.push_back({fact("set_the_regulator_higher", higher), {{{"air.set pressure", higher}}}});
  const GaugePressure finish = plan.transfer.fill.pressure_to_finish;
  GaugePressure roomy = on_the_dial(gauge_pascals(in_pascals(finish) * kFinishAndHalf));
  if (const auto& shut = plan.transfer.relief_stays_shut)
    roomy = std::min(roomy, gauge_pascals(in_pascals(*shut) * kAsPrinted));
  std::vector<Mend> walls = stiffer_for_four(plan, settled, roomy);
  // A setting of the job's own stays as low as it is in walls that are stiffer.
  if (plan.transfer.setting_given && more_than(roomy, plan.transfer.setting)) {
    const GaugePressure seen = std::max(roomy, wanted_of_walls(plan));
    walls = with_too(stiffer_for_four(plan, settled, seen), fact("set_the_regulator_higher", roomy),
                     {{"air.set pressure", roomy}});
  }
  std::move(walls.begin(), walls.end(), std::back_inserter(mends));
  for (Mend& mend : higher_valves(plan, settled)) mends.push_back(std::move(mend));
  return mends;
}

/// From the setting down to what just finishes the fill.
PressureDifference room_below(const Plan& plan) {
  return plan.transfer.setting - plan.transfer.fill.pressure_to_finish;
}

/// No device is asked for that nobody makes.
bool is_made(const Settled& settled, PressureDifference repeats) {
  return at_most((settled.regulator_range - psig(0.0)) * kFinestRepeatability, repeats);
}

/// The gauge by which the knob is marked in the leak test, where that is none of the job's: what it is off at the
/// setting.
std::optional<PressureDifference> error_of_test_gauge(const Plan& plan) {
  const LeakTestPlan& test = plan.leak_test;
  if (!test.by_own_regulator() || test.gauge_of_job || !(test.gauge_full_scale > psig(0.0))) return std::nullopt;
  return dial_error(test.gauge_full_scale, plan.transfer.setting);
}

/// What a setting may lose by being typed as it is printed.
PressureDifference lost_in_print(const Plan& plan) { return (plan.transfer.setting - psig(0.0)) * (1.0 - kAsPrinted); }

/// What the regulator is to come back to beside the gauges, which may be off, too: so that each finding asks for the
/// same device.
PressureDifference left_by_gauges(const Plan& plan) {
  PressureDifference error = error_of_test_gauge(plan).value_or(PressureDifference());
  if (const Way* gauge = gauge_read(plan))
    error = std::max(error, dial_error(*plan.catalog->part(*gauge->device).full_scale, plan.transfer.setting));
  return (room_below(plan) - lost_in_print(plan) - error) * kAsPrinted;
}

void judge_repeatability(const Plan& plan, const Settled& settled, Open& open) {
  const PressureDifference room = room_around(plan);
  const PressureDifference repeats = settled.regulator_repeatability;
  // What has no room at all has a finding of its own.
  if (room <= kNoRoom || at_most(repeats, room * kLargeShare)) return;
  Finding& finding =
      open.not_yet(Topic::transfer, fact("regulator_repeats_too_coarsely", repeats, plan.transfer.setting, room), {},
                   {}, "common practice");
  std::vector<Mend> mends = more_room(plan, settled);
  PressureDifference fine = room * kLargeShare * kAsPrinted;
  const PressureDifference finer = (room - lost_in_print(plan)) * kLargeShare * kAsPrinted;
  if (is_made(settled, finer)) fine = finer;
  if (const PressureDifference left = left_by_gauges(plan); is_made(settled, left)) fine = std::min(fine, left);
  if (is_made(settled, fine))
    mends.insert(mends.begin(),
                 {fact("regulator_that_repeats_within", fine), {{{"air.regulator repeatability", fine}}}});
  mend_first_by(std::move(mends), finding);
}

/// What the knob's gauge may be off, and what the regulator comes back to, may both be on the low side. A regulator
/// that comes back to worse than is asked of it has a finding of its own, and counts here as what is asked.
bool is_fine_enough(const Plan& plan, const Settled& settled, PressureDifference error) {
  const PressureDifference room = room_below(plan);
  return at_most(error + std::min(settled.regulator_repeatability, room * kLargeShare), room);
}

/// A setting with more room costs nothing; else a regulator that leaves the gauge its error, where such a one is sold.
std::vector<Mend> beside_the_gauge(const Plan& plan, const Settled& settled) {
  std::vector<Mend> mends = more_room(plan, settled);
  const auto other = std::find_if(mends.begin(), mends.end(), [](const Mend& mend) {
    return mend.ways_to_mend.empty() || mend.ways_to_mend.front().front().key != "air.set pressure";
  });
  const PressureDifference left = left_by_gauges(plan);
  if (is_made(settled, left))
    mends.insert(other, {fact("regulator_that_repeats_within", left), {{{"air.regulator repeatability", left}}}});
  return mends;
}

/// The knob is set by the gauge: what that may be off decides whether the water comes up at all.
void judge_by_gauge(const Plan& plan, const Settled& settled, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  const Way* gauge = gauge_read(plan);
  if (gauge == nullptr || room_below(plan) <= kNoRoom) return;
  const catalog::Part& part = plan.catalog->part(*gauge->device);
  const PressureDifference error = dial_error(*part.full_scale, setting);
  if (is_fine_enough(plan, settled, error)) return;
  Finding& finding = open.not_yet(Topic::transfer,
                                  fact("gauge_too_coarse_for_setting", gauge->branched ? gauge->end : gauge->connection,
                                       error, setting, room_below(plan), settled.regulator_repeatability),
                                  {}, {}, "ASME B40.100, grade B");
  std::vector<Mend> mends;
  const auto finer =
      gauge_that_stands(*plan.catalog, setting, most_in_use(plan), part.ports[0].type,
                        [&](GaugePressure scale) { return is_fine_enough(plan, settled, dial_error(scale, setting)); });
  if (finer)
    mends.push_back(
        {fact("gauge_that_is_sold", plan.catalog->part(*finer).name), {}, {{other_device(*gauge, *finer)}}});
  for (Mend& mend : beside_the_gauge(plan, settled)) mends.push_back(std::move(mend));
  mend_first_by(std::move(mends), finding);
}

/// A leak test so low that a gauge which is fine enough for the knob shows its pressure, too, and that still proves
/// what comes in use.
std::optional<Mend> test_of_a_finer_gauge(const Plan& plan, const Settled& settled) {
  const auto lowest = test_that_has_relief(plan, typed(most_in_use(plan)));
  if (!lowest || !more_than(plan.leak_test.pressure, *lowest)) return std::nullopt;
  const auto dials = gauges_least_off(*plan.catalog, *lowest, plan.transfer.setting);
  if (dials.empty() ||
      !is_fine_enough(plan, settled, dial_error(*plan.catalog->part(dials.front()).full_scale, plan.transfer.setting)))
    return std::nullopt;
  return Mend{fact("test_at", *lowest), {{{"test pressure", *lowest}}}};
}

/// By the gauge of the test the mark may stand farther over the setting than the job's own would let it.
void judge_mark_under_valves(const Plan& plan, const Settled& settled, PressureDifference error, Open& open) {
  const PressureDifference repeats = std::min(settled.regulator_repeatability, plan.transfer.knob_off);
  const GaugePressure most = left_alone(plan) - plan.transfer.knob_off + error + repeats;
  for (const ReliefValve& valve : plan.relief.valves) {
    const GaugePressure opens = opens_at_least(plan, valve.opens);
    // What opens by the job's own gauge has a finding already.
    if (at_most(most, opens) || more_than(left_alone(plan), opens)) continue;
    Finding& finding = open.not_yet(
        Topic::leak_test,
        fact("mark_by_test_gauge_opens_relief", plan.leak_test.gauge_full_scale, error, valve.connection, opens, most),
        {}, {}, "ASME B40.100, grade B");
    std::vector<Mend> mends;
    if (auto lower_test = test_of_a_finer_gauge(plan, settled)) mends.push_back(std::move(*lower_test));
    const GaugePressure lower = gauge_pascals(kAsPrinted * in_pascals(plan.transfer.setting - (most - opens)));
    if (more_than(lower, plan.transfer.least_setting))
      mends.push_back({fact("lower_setting", lower), {{{"air.set pressure", lower}}}});
    for (Mend& mend : higher_valves(plan, settled)) mends.push_back(std::move(mend));
    mend_first_by(std::move(mends), finding);
    return;
  }
}

}  // namespace

void judge_knob(const Plan& plan, const Settled& settled, Open& open) {
  if (more_than(plan.transfer.setting, plan.transfer.highest_setting)) return;  // has a finding of its own
  judge_repeatability(plan, settled, open);
  judge_by_gauge(plan, settled, open);
}

// The job's own gauge is judged with the setting; here one that shows the test's pressure and is coarser there.
void judge_knobs_mark(const Plan& plan, const Settled& settled, Open& open) {
  const auto error = error_of_test_gauge(plan);
  const GaugePressure setting = plan.transfer.setting;
  if (!error || room_below(plan) <= kNoRoom || more_than(setting, plan.transfer.highest_setting)) return;
  judge_mark_under_valves(plan, settled, *error, open);
  if (is_fine_enough(plan, settled, *error)) return;
  Finding& finding = open.not_yet(Topic::leak_test,
                                  fact("gauge_of_test_too_coarse_for_setting", plan.leak_test.gauge_full_scale, *error,
                                       setting, room_below(plan), settled.regulator_repeatability),
                                  {}, {}, "ASME B40.100, grade B");
  std::vector<Mend> mends;
  if (auto lower = test_of_a_finer_gauge(plan, settled)) mends.push_back(std::move(*lower));
  for (Mend& mend : beside_the_gauge(plan, settled)) mends.push_back(std::move(mend));
  mend_first_by(std::move(mends), finding);
}

}  // namespace riserun::plan
