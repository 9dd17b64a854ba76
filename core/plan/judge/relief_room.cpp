#include "plan/judge/relief_room.h"

#include "plan/judge/limits.h"
#include "plan/settle/wall_request.h"
#include "plan/sold.h"
#include "quantity/nearly.h"
#include "reservoir/test_pressure.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

constexpr double kUsualOverFinish = 1.5;  // as a setting is worked out where nothing is in its way

// Of relief valves for a few psi, as shares of where they open (common practice): a code valve's plus or minus 2 psi is
// not theirs.
constexpr double kUsualTolerance = 0.05;
constexpr double kUsualRise = 0.1;
constexpr double kShareOfTolerance = kUsualTolerance / (kUsualTolerance + kUsualRise);

}  // namespace

GaugePressure typed(GaugePressure least) { return gauge_pascals(in_pascals(least) / kAsPrinted); }

GaugePressure most_test(const Plan& plan) {
  return gauge_pascals(in_pascals(reservoir::most_test_pressure(plan.walls.limit)) * kAsPrinted);
}

std::optional<GaugePressure> test_that_has_relief(const Plan& plan, GaugePressure least) {
  const GaugePressure most = most_test(plan);
  for (auto sold = relief_sold_above(*plan.catalog, least); sold; sold = relief_sold_above(*plan.catalog, *sold)) {
    const GaugePressure pressure = std::max(least, typed(reservoir::least_relieved_by(*sold)));
    if (more_than(pressure, most)) return std::nullopt;
    const auto ceiling = reservoir::relief_setting(pressure, plan.walls.limit);
    if (ceiling && more_than(*sold, pressure) && at_most(*sold, *ceiling)) return pressure;
  }
  return std::nullopt;
}

GaugePressure opens_at_least(const Plan& plan, GaugePressure mark) {
  return mark - plan.job.relief_valve.tolerance.value_or(PressureDifference());
}

bool setting_goes_under(const Plan& plan, GaugePressure mark) {
  const TransferPlan& transfer = plan.transfer;
  const transfer::AirSupply& air = transfer.system.air;
  const GaugePressure shut = opens_at_least(plan, mark) - locks_up_by(air) - transfer.knob_off;
  return !transfer.setting_given && at_most(transfer.least_setting, within_limit(shut));
}

PressureDifference locks_up_by(const transfer::AirSupply& air) {
  return std::max(PressureDifference(), air.lock_up - air.after_regulator.opens_at());
}

GaugePressure left_alone(const Plan& plan) {
  return std::max(plan.transfer.setting, plan.transfer.fill.pressure_left_alone) + plan.transfer.knob_off;
}

std::optional<GaugePressure> valve_that_fits(const Plan& plan, const ReliefValve& valve, GaugePressure most) {
  const PressureDifference to_full_flow = valve.full_flow - valve.opens;
  // A setting that is worked out goes down for the valve, as far as it still lifts the water surely.
  const bool goes_down = !plan.transfer.setting_given && more_than(left_alone(plan), valve.opens);
  const auto stays_shut = [&](GaugePressure mark) {
    return setting_goes_under(plan, mark) || at_most(left_alone(plan), opens_at_least(plan, mark));
  };
  std::optional<GaugePressure> sold = relief_sold_above(*plan.catalog, goes_down ? valve.opens : left_alone(plan));
  while (sold && !stays_shut(*sold)) sold = relief_sold_above(*plan.catalog, *sold);
  return sold && at_most(*sold + to_full_flow, most) ? sold : std::nullopt;
}

std::optional<GaugePressure> valve_that_keeps_four(const Plan& plan, const ReliefValve& valve, GaugePressure most) {
  const GaugePressure opens_by = std::min(plan.walls.four_to_one, most) - (valve.full_flow - valve.opens);
  const auto sold = relief_sold_below(*plan.catalog, std::min(opens_by, valve.opens));
  return sold && setting_goes_under(plan, *sold) ? sold : std::nullopt;
}

std::optional<Mend> own_figures(const Plan& plan, const ReliefValve& valve) {
  const JobReliefValve& given = plan.job.relief_valve;
  if (given.tolerance && given.rise) return std::nullopt;
  const PressureDifference opens = valve.opens - psig(0.0);
  Changes figures;
  if (!given.tolerance) figures.push_back({"relief valve.tolerance", opens * kUsualTolerance});
  if (!given.rise) figures.push_back({"relief valve.rise", opens * kUsualRise});
  return Mend{fact("give_the_valves_own_figures"), {}, {std::move(figures)}};
}

std::optional<Mend> closer_valve(const Plan& plan, const ReliefValve& valve, std::optional<GaugePressure> by) {
  const auto& given = plan.job.relief_valve.tolerance;
  if (!given) return std::nullopt;
  const PressureDifference rise = valve.full_flow - valve.opens - *given;
  const GaugePressure most = by.value_or(std::min(plan.walls.four_to_one, plan.walls.limit));
  for (auto sold = relief_sold_above(*plan.catalog, left_alone(plan)); sold && at_most(*sold + rise, most);
       sold = relief_sold_above(*plan.catalog, *sold)) {
    const PressureDifference closer = std::min(*sold - left_alone(plan), most - (*sold + rise)) * kAsPrinted;
    if (!at_most((*sold - psig(0.0)) * kUsualTolerance, closer) || !more_than(*given, closer)) continue;
    const Change within{"relief valve.tolerance", closer};
    if (in_pascals(*sold) == in_pascals(valve.opens)) return Mend{fact("valve_of_less_tolerance", closer), {{within}}};
    return Mend{fact("valve_set_at_of_less_tolerance", *sold, closer), {}, {{{kReliefSetting, *sold}, within}}};
  }
  return std::nullopt;
}

std::optional<Mend> closer_and_sooner_valve(const Plan& plan, const ReliefValve& valve,
                                            std::optional<GaugePressure> by) {
  const JobReliefValve& given = plan.job.relief_valve;
  if (!given.tolerance || !given.rise) return std::nullopt;
  const GaugePressure four = std::min(plan.walls.four_to_one, plan.walls.limit);
  const GaugePressure most = std::min(four, by.value_or(four));
  const PressureDifference room = (most - valve.opens) * kAsPrinted;
  const PressureDifference opens = valve.opens - psig(0.0);
  const PressureDifference stays_shut = (valve.opens - left_alone(plan)) * kAsPrinted;
  const PressureDifference off = std::min({*given.tolerance, stays_shut, room * kShareOfTolerance});
  const PressureDifference rise = std::min(*given.rise, room - off);
  if (!at_most(opens * kUsualTolerance, off) || !at_most(opens * kUsualRise, rise)) return std::nullopt;
  return Mend{fact("valve_of_less_tolerance_and_rise", off, rise),
              {{{"relief valve.tolerance", off}, {"relief valve.rise", rise}}}};
}

std::optional<GaugePressure> lower_mark(const Plan& plan, const Settled& settled, const ReliefValve& valve) {
  const bool passes_four = more_than(valve.full_flow, plan.walls.four_to_one);
  const PressureDifference to_repeat = settled.regulator_repeatability * (1.0 / kLargeShare);
  auto sold = valve_that_fits(plan, valve, kCodePressure);
  while (sold && more_than(plan.transfer.setting + to_repeat, *sold)) sold = relief_sold_above(*plan.catalog, *sold);
  if (sold && !more_than(valve.opens, *sold)) sold.reset();
  const bool keeps_four = sold && at_most(*sold + (valve.full_flow - valve.opens), plan.walls.four_to_one);
  if (!passes_four || keeps_four) return sold;
  // For it a setting that is worked out goes down.
  const auto four = valve_that_keeps_four(plan, valve, plan.walls.four_to_one);
  return four ? four : sold;
}

std::optional<Mend> lower_valve(const Plan& plan, const Settled& settled, const ReliefValve& valve) {
  const auto mark = lower_mark(plan, settled, valve);
  if (!mark) return std::nullopt;
  return Mend{fact("valve_that_opens_at", *mark), {}, {{{kReliefSetting, *mark}}}};
}

std::optional<Mend> turned_down(const Plan& plan) {
  const TransferPlan& transfer = plan.transfer;
  const GaugePressure lower = transfer.usual_setting;
  const auto usual = gauge_pascals(kUsualOverFinish * in_pascals(transfer.fill.pressure_to_finish));
  if (!transfer.setting_given || !more_than(transfer.setting, lower) || !more_than(transfer.setting, usual))
    return std::nullopt;
  return Mend{fact("lower_setting", lower), {{{"air.set pressure", lower}}}};
}

std::vector<Mend> less_to_see(const Plan& plan, const Settled& settled, const ReliefValve& valve) {
  std::vector<Mend> mends;
  for (auto& mend :
       {turned_down(plan), own_figures(plan, valve), lower_valve(plan, settled, valve), closer_valve(plan, valve)})
    if (mend) mends.push_back(*mend);
  return mends;
}

void mend_first_by(std::vector<Mend> mends, Finding& finding) {
  if (mends.empty()) return;
  if (finding.mend)
    mends.push_back({std::move(*finding.mend), std::move(finding.ways_to_mend), std::move(finding.ways_to_try)});
  finding.mend = std::move(mends.front().fact);
  finding.ways_to_mend = std::move(mends.front().ways_to_mend);
  finding.ways_to_try = std::move(mends.front().ways_to_try);
  finding.or_else.insert(finding.or_else.begin(), std::next(mends.begin()), mends.end());
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
