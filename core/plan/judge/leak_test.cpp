// The leak test: at least what comes in use, no more than the walls keep their factor at, with a relief valve that is
// sold and every port closed.
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "plan/sold.h"
#include "quantity/nearly.h"
#include "reservoir/test_pressure.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

/// A test that stresses the walls beyond a quarter of their yield, and beyond all that comes in use.
/// @return it is one
bool judge_hard_test(const Plan& plan, const Settled& settled, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  GaugePressure in_use = plan.transfer.setting;
  for (const ReliefValve& valve : plan.relief.valves) in_use = std::max(in_use, valve.full_flow);
  const GaugePressure most = gauge_pascals(in_pascals(plan.walls.four_to_one) * kAsPrinted);
  // It must have a relief valve, and be let in as it is printed.
  const GaugePressure least = test_that_has_relief(plan, typed(in_use)).value_or(typed(in_use));
  const GaugePressure allowed = std::max(plan.walls.four_to_one, least);
  if (at_most(in_pascals(test.pressure) * kAsPrinted, in_pascals(allowed))) return false;
  Finding& finding =
      open.not_yet(Topic::leak_test, fact("test_passes_four_to_one", test.pressure),
                   Against{test.pressure, plan.walls.four_to_one}, fact("stiffer_walls"), "common practice");
  finding.or_else = stiffer_for_four(plan, settled, test.pressure);
  const GaugePressure lower = std::max(most, least);
  finding.or_else.insert(finding.or_else.begin(), {fact("test_at", least), {{{"test pressure", least}}}});
  if (at_most(most_test(plan), lower) || !test.given) return true;
  finding.mend = fact("test_at", lower);
  finding.ways_to_mend = {{{"test pressure", lower}}};
  return true;
}

/// A test that the job asks for, far above all that comes in use: it proves nothing more, and stores more energy beside
/// people.
void judge_needless_test(const Plan& plan, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  const GaugePressure in_use = most_in_use(plan);
  const GaugePressure most =
      std::max(gauge_pascals(in_pascals(in_use) * kMostTestOverUse), reservoir::kMostTestPressure);
  const GaugePressure least = test_that_has_relief(plan, typed(in_use)).value_or(typed(in_use));
  if (!test.given || at_most(in_pascals(test.pressure) * kAsPrinted, in_pascals(std::max(most, least)))) return;
  Finding& finding = open.not_yet(Topic::leak_test, fact("test_far_above_use", test.pressure, in_use),
                                  Against{test.pressure, most}, fact("test_at", least), "common practice");
  finding.ways_to_mend = {{{"test pressure", least}}};
  finding.or_else = {{fact("leave_test_pressure_out"), {{{"test pressure", ""}}}}};
}

/// No flat-sided tank is tested at more than is usual for a relief valve that stands higher than it need: a lower one,
/// and the test that this asks for where that is another.
std::optional<Mend> lower_valve_and_test(const Plan& plan, const Settled& settled, GaugePressure in_use) {
  const LeakTestPlan& test = plan.leak_test;
  if (at_most(in_use, reservoir::kMostTestPressure)) return std::nullopt;
  for (const ReliefValve& valve : plan.relief.valves) {
    const auto lower = lower_mark(plan, settled, valve);
    if (!lower) continue;
    const GaugePressure seen = *lower + (valve.full_flow - valve.opens);
    if (!test.given && at_most(seen, reservoir::kMostTestPressure)) return lower_valve(plan, settled, valve);
    const auto pressure = test_that_has_relief(plan, test.given ? std::max(test.pressure, typed(seen)) : typed(seen));
    if (!pressure || !more_than(in_use, *pressure)) continue;
    return Mend{fact("relief_valve_and_test_at", *lower, *pressure),
                {},
                {{{kReliefSetting, *lower}, {"test pressure", *pressure}}}};
  }
  return std::nullopt;
}

/// A test that is let in, else a relief valve that the walls have room to be tested for.
void mend_weak_test(const Plan& plan, const Settled& settled, GaugePressure in_use, Finding& finding) {
  const LeakTestPlan& test = plan.leak_test;
  if (auto lower = lower_valve_and_test(plan, settled, in_use)) {
    finding.mend = std::move(lower->fact);
    finding.ways_to_try = std::move(lower->ways_to_try);
    return;
  }
  if (const auto pressure = test_that_has_relief(plan, typed(in_use))) {
    finding.mend = fact("test_at", *pressure);
    finding.ways_to_mend = {{{"test pressure", *pressure}}};
    return;
  }
  for (const ReliefValve& valve : plan.relief.valves) {
    const auto at_four = valve_that_keeps_four(plan, valve, most_test(plan));
    if (!test.given && !plan.transfer.setting_given && at_four) {
      finding.mend = fact("valve_that_opens_at", *at_four);
      finding.ways_to_try = {{{kReliefSetting, *at_four}}};
      return;
    }
    const auto lower = valve_that_fits(plan, valve, most_test(plan));
    if (!lower || !more_than(valve.opens, *lower)) continue;
    finding.mend = fact("relief_valve_and_test_at", *lower, typed(*lower + (valve.full_flow - valve.opens)));
    finding.ways_to_try = {
        {{kReliefSetting, *lower}, {"test pressure", typed(*lower + (valve.full_flow - valve.opens))}}};
    return;
  }
}

/// What it may come to by an overset regulator or relief valve is no reason to test at more than is usual.
void mend_by_less_to_see(const Plan& plan, const Settled& settled, Finding& finding) {
  const GaugePressure in_use = most_in_use(plan);
  // A test that the job asks for is raised where that is usual, and stays where a lower relief valve is the thing.
  if (plan.leak_test.given && at_most(in_use, reservoir::kMostTestPressure)) return;
  for (const ReliefValve& valve : plan.relief.valves)
    if (quantity::at_most(in_use, std::max(valve.full_flow, plan.transfer.setting)))
      mend_first_by(less_to_see(plan, settled, valve), finding);
}

/// A test that proves less than what comes in use.
void judge_weak_test(const Plan& plan, const Settled& settled, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  const GaugePressure in_use = most_in_use(plan);
  Finding& finding = open.not_yet(Topic::leak_test, fact("test_below_what_may_be_seen", test.pressure, in_use), {},
                                  fact("stiffer_walls_or_lower_setting"), "common practice");
  finding.or_else = stiffer_for_four(plan, settled, std::max(typed(in_use), wanted_of_walls(plan)));
  mend_weak_test(plan, settled, in_use, finding);
  mend_by_less_to_see(plan, settled, finding);
}

/// Of a test that the job asks for the lowest that still proves what comes in use, with less force on the lid; then the
/// lowest from there on.
std::vector<Mend> tests_with_relief(const Plan& plan) {
  const GaugePressure in_use = std::max(most_in_use(plan), reservoir::kLeastTestPressure);
  const GaugePressure asked = std::max(in_use, plan.leak_test.pressure);
  std::vector<Mend> mends;
  for (const GaugePressure least : {plan.leak_test.given ? in_use : asked, asked}) {
    const auto pressure = test_that_has_relief(plan, typed(least));
    if (!pressure || (!mends.empty() && mends.back().fact == fact("test_at", *pressure))) continue;
    mends.push_back({fact("test_at", *pressure), {{{"test pressure", *pressure}}}});
  }
  return mends;
}

/// The rig must have a relief valve, and none that is sold is right for the pressure.
void judge_relief_of_test(const Plan& plan, const Settled& settled, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  const bool has_room = more_than(gauge_pascals(in_pascals(test.relief) * kAsPrinted), test.pressure);
  Finding& finding = open.not_yet(Topic::leak_test,
                                  has_room ? fact("no_relief_sold_for_the_test", test.pressure, test.relief)
                                           : fact("no_room_for_relief_of_test", test.pressure),
                                  {}, fact("test_lower_or_with_water"), "common practice");
  finding.or_else = stiffer_for_four(plan, settled, std::max(most_in_use(plan), test.pressure));
  mend_first_by(tests_with_relief(plan), finding);
  mend_by_less_to_see(plan, settled, finding);
}

/// With the regulator of the test stuck open the rig's valve is all that guards the walls, as the reservoir's own is in
/// use.
void judge_relief_flow_of_test(const Plan& plan, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  if (test.relief_is_enough) return;
  const Length hole = next_drill_down(test.throttle_bore);
  open.not_yet(Topic::leak_test, fact("relief_of_test_too_narrow", test.relief_passes, test.supply_gives), {},
               hole > Length() ? fact("restrictor_for_the_test", hole) : fact("test_by_hand_pump"), "worked out");
}

}  // namespace

void judge_leak_test(const Plan& plan, const Settled& settled, bool valve_is_enough, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  if (!test.possible) {
    if (!test.given)  // one that was asked for has been refused
      open.not_yet(Topic::leak_test, fact("no_leak_test_possible", test.basis), {}, {}, "worked out").or_else =
          stiffer(plan, settled,
                  gauge_pascals(in_pascals(std::max(most_in_use(plan), reservoir::kLeastTestPressure)) *
                                reservoir::kLimitOverTestPressure));
    return;
  }
  const bool is_hard = judge_hard_test(plan, settled, open);
  for (const TestPlug& plug : test.plugs)
    if (!plug.part)
      open.not_yet(
          Topic::leak_test,
          fact("plug_of_test_is_not_sold", plug.port, plan.catalog->written(find_port(plan.job, plug.port)->type)), {},
          fact("bung_of_another_thread"), "catalog");
  // What the reservoir comes to is known only with a relief valve that holds it there.
  const bool is_weak =
      valve_is_enough && at_most(most_in_use(plan), plan.walls.limit) && more_than(most_in_use(plan), test.pressure);
  if (is_weak)
    judge_weak_test(plan, settled, open);
  else if (!is_hard)
    judge_needless_test(plan, open);
  judge_relief_flow_of_test(plan, open);
  if (!test.relief_opens) judge_relief_of_test(plan, settled, open);
}

}  // namespace riserun::plan
