#include "plan/judge/relief_room.h"

#include "plan/judge/limits.h"
#include "plan/settle/wall_request.h"
#include "plan/sold.h"
#include "quantity/nearly.h"
#include "reservoir/test_pressure.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

}  // namespace

GaugePressure typed(GaugePressure least) { return gauge_pascals(in_pascals(least) / kAsPrinted); }

GaugePressure most_test(const Plan& plan) {
  return gauge_pascals(in_pascals(reservoir::most_test_pressure(plan.walls.limit)) * kAsPrinted);
}

GaugePressure opens_at_least(const Plan& plan, GaugePressure mark) {
  return mark - plan.job.relief_valve.tolerance.value_or(PressureDifference());
}

GaugePressure left_alone(const Plan& plan) {
  return std::max(plan.transfer.setting, plan.transfer.fill.pressure_left_alone);
}

std::optional<GaugePressure> valve_that_fits(const Plan& plan, const ReliefValve& valve, GaugePressure most) {
  const PressureDifference to_full_flow = valve.full_flow - valve.opens;
  std::optional<GaugePressure> sold = relief_sold_above(*plan.catalog, left_alone(plan));
  while (sold && more_than(left_alone(plan), opens_at_least(plan, *sold)))
    sold = relief_sold_above(*plan.catalog, *sold);
  return sold && at_most(*sold + to_full_flow, most) ? sold : std::nullopt;
}

std::optional<GaugePressure> valve_that_keeps_four(const Plan& plan, const ReliefValve& valve, GaugePressure most) {
  const GaugePressure opens_by = std::min(plan.walls.four_to_one, most) - (valve.full_flow - valve.opens);
  const auto sold = relief_sold_below(*plan.catalog, std::min(opens_by, valve.opens));
  return sold && more_than(*sold, plan.transfer.fill.pressure_to_finish) ? sold : std::nullopt;
}

GaugePressure wanted_of_walls(const Plan& plan) {
  GaugePressure wanted = most_in_use(plan);
  for (const ReliefValve& valve : plan.relief.valves) {
    if (!more_than(left_alone(plan), opens_at_least(plan, valve.opens))) continue;
    if (const auto fits = valve_that_fits(plan, valve, kCodePressure))
      wanted = std::max(wanted, *fits + (valve.full_flow - valve.opens));
  }
  return wanted;
}

std::vector<Mend> stiffer(const Plan& plan, const Settled& settled, GaugePressure wanted) {
  return stiffer_walls(plan.job, settled, plan.levels.charge_depth, wanted, settled.design_stress);
}
std::vector<Mend> stiffer_for_four(const Plan& plan, const Settled& settled, GaugePressure wanted) {
  return stiffer_walls(plan.job, settled, plan.levels.charge_depth, wanted, quarter_of_yield(settled));
}

GaugePressure most_in_use(const Plan& plan) {
  return plan.relief.given ? std::max(plan.relief.greatest, plan.transfer.setting) : plan.transfer.setting;
}

}  // namespace riserun::plan
