#include "plan/judge/open.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

constexpr const char* kSection465 = "California Code of Regulations, Title 8, section 465 (from memory)";
constexpr const char* kFactorOfFour = "California Code of Regulations, Title 8, section 3301(e)";
constexpr const char* kReliefRules = "ASME BPVC Section VIII UG-125, UG-134";

/// It opens, is off by its tolerance, and rises to full flow: all of that stays under the walls' limit.
void judge_setting(const Plan& plan, const ReliefValve& valve, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  // Left alone the regulator locks up above its setting, and the valve may open below its mark.
  const GaugePressure left_alone = std::max(setting, plan.transfer.fill.pressure_left_alone);
  const GaugePressure opens_at_least = valve.opens - plan.job.relief_valve.tolerance.value_or(PressureDifference());
  // Where the walls leave no room for a higher valve, the setting comes down.
  const Fact room =
      more_than(plan.relief.set_pressure, left_alone) && at_most(plan.relief.set_pressure, plan.walls.four_to_one)
          ? fact("valve_that_opens_at", plan.relief.set_pressure)
          : fact("lower_setting");
  if (more_than(setting, valve.opens))
    open.not_yet(Topic::relief, fact("relief_valve_blows_in_use", valve.connection, valve.opens, setting), {}, room,
                 "worked out");
  else if (more_than(left_alone, opens_at_least))
    open.not_yet(Topic::relief, fact("relief_valve_weeps", valve.connection, valve.opens, opens_at_least, left_alone),
                 {}, room, "worked out");
  if (at_most(valve.full_flow, plan.walls.limit)) return;
  const JobReliefValve& given = plan.job.relief_valve;
  const Fact mend =
      given.tolerance && given.rise ? fact("valve_set_lower_or_stronger_walls") : fact("give_the_valves_own_figures");
  open.not_yet(Topic::relief, fact("relief_valve_opens_above_limit", valve.connection, valve.opens, valve.full_flow),
               Against{valve.full_flow, plan.walls.limit}, mend, kReliefRules);
}

void judge_capacity(const Plan& plan, Open& open) {
  const std::vector<ReliefValve>& valves = plan.relief.valves;
  const auto first = std::min_element(valves.begin(), valves.end(), [](const ReliefValve& a, const ReliefValve& b) {
    return a.full_flow < b.full_flow;
  });
  if (at_most(plan.relief.greatest, first->full_flow)) return;
  const Fact reason = first->bore < first->own_bore ? fact("relief_valve_fed_too_narrow", first->connection,
                                                           first->own_bore, first->bore, first->passes, first->supply)
                                                    : fact("relief_valve_too_narrow", first->connection,
                                                           first->own_bore, first->passes, first->supply);
  // Where one is sold that does, and the fill was worked out again with it, it is that one.
  const Length hole = plan.relief.restrictor ? plan.relief.restrictor->bore : next_drill_down(first->restrictor);
  open.not_yet(Topic::relief, reason, {}, fact("restrictor_on_supply_side", hole, first->needed_bore),
               "worked out; fuel gas code section 416.2.5 sizes relief so",
               Purchase{"restrictor", "restrictor", fact("hole_no_larger_than", hole)})
      .ways_to_mend = {{{"air.restrictor", hole}}};
}

/// One that stands where it guards nothing is none.
/// @return there is one
bool judge_places(const Plan& plan, Open& open) {
  bool any = false;
  for (const Way& way : plan.ways) {
    if (!way.guards_nothing) continue;
    any = true;
    open.not_yet(Topic::relief, *way.guards_nothing, {}, fact("relief_valve_on_a_port_of_its_own"), kSection465);
  }
  return any;
}

/// What to buy: a valve that opens between the setting and what the walls may see; where none that is sold does, that
/// is said, with what would make room for one.
Fact valve_to_buy(const Plan& plan, const std::optional<PartId>& part) {
  const ReliefPlan& relief = plan.relief;
  const GaugePressure setting = plan.transfer.setting;
  if (part || !(relief.set_pressure > setting)) return fact("buy_relief_valve", relief.set_pressure, relief.must_pass);
  const auto above = relief_sold_above(*plan.catalog, relief.set_pressure);
  const auto below = relief_sold_below(*plan.catalog, relief.set_pressure);
  if (above && below)
    return fact("no_relief_valve_is_sold_between", relief.set_pressure, relief.must_pass, setting, *above, *below);
  if (above) return fact("no_relief_valve_is_sold_so_low", relief.set_pressure, relief.must_pass, setting, *above);
  return fact("buy_relief_valve", relief.set_pressure, relief.must_pass);
}

void judge_no_valve(const Plan& plan, Open& open) {
  const ReliefPlan& relief = plan.relief;
  std::optional<Purchase> valve;
  const auto part = relief_valve_for(*plan.catalog, plan.transfer.setting, relief.set_pressure);
  if (relief.set_pressure > psig(0.0))
    valve = Purchase{"relief", "relief valve",
                     relief.valve_bore ? fact("set_at_with_clear_bore", relief.set_pressure, *relief.valve_bore)
                                       : fact("set_at", relief.set_pressure),
                     part};
  // A reducing valve is none: ASME BPVC Section VIII UG-125(g), note.
  Finding& finding =
      open.not_yet(Topic::relief, fact("no_relief_valve"), {}, valve_to_buy(plan, part), kSection465, std::move(valve));
  if (part) finding.ways_to_mend = {{{"connections", "", part}}};
}

/// A setting may leave no room under what keeps the factor at 4: the valve that is advised then passes it, and that is
/// not left unsaid.
void judge_advised_setting(const Plan& plan, Open& open) {
  if (plan.transfer.setting > plan.walls.limit) return;  // refused
  if (plan.relief.set_pressure <= plan.walls.four_to_one) return;
  open.not_yet(Topic::relief, fact("relief_setting_passes_four_to_one", plan.relief.set_pressure),
               Against{plan.relief.set_pressure, plan.walls.four_to_one}, fact("stiffer_walls_or_lower_setting"),
               kFactorOfFour);
}

/// The welds are proved for what they may see in use.
void judge_test(const Plan& plan, Open& open) {
  const LeakTestPlan& test = plan.leak_test;
  const GaugePressure in_use =
      plan.relief.given ? std::max(plan.relief.greatest, plan.transfer.setting) : plan.transfer.setting;
  if (!test.possible) {
    if (!test.given)  // one that was asked for has been refused
      open.not_yet(Topic::leak_test, fact("no_leak_test_possible", test.basis), {}, {}, "worked out");
    return;
  }
  if (more_than(in_use, test.pressure))
    open.not_yet(Topic::leak_test, fact("test_below_what_may_be_seen", test.pressure, in_use), {},
                 fact("raise_test_or_lower_relief"), "common practice");
}

}  // namespace

void judge_relief(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const bool idle = judge_places(plan, open);
  if (plan.relief.given) {
    for (const ReliefValve& valve : plan.relief.valves) judge_setting(plan, valve, open);
    judge_capacity(plan, open);
  } else {
    if (!idle && !devices_are_missing(plan)) judge_no_valve(plan, open);
    judge_advised_setting(plan, open);
  }
  judge_test(plan, open);
}

}  // namespace riserun::plan
