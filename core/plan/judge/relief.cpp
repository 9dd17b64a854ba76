#include "plan/judge/open.h"
#include "plan/sold.h"

#include <algorithm>

namespace riserun::plan {

namespace {

constexpr const char* kSection465 = "California Code of Regulations, Title 8, section 465 (from memory)";
constexpr const char* kReliefRules = "ASME BPVC Section VIII UG-125, UG-134";

/// It opens, is off by its tolerance, and rises to full flow: all of that stays under the walls' limit.
void judge_setting(const Plan& plan, const ReliefValve& valve, Open& open) {
  if (valve.opens < plan.transfer.setting)
    open.not_yet(Topic::relief, fact("relief_valve_blows_in_use", valve.connection, valve.opens, plan.transfer.setting),
                 {}, fact("valve_that_opens_at", plan.relief.set_pressure), "worked out");
  if (valve.full_flow <= plan.walls.limit) return;
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
  if (plan.relief.greatest <= first->full_flow) return;
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
  if (test.pressure < in_use)
    open.not_yet(Topic::leak_test, fact("test_below_what_may_be_seen", test.pressure, in_use), {},
                 fact("raise_test_or_lower_relief"), "common practice");
}

}  // namespace

void judge_relief(const Plan& plan, const Settled& /*settled*/, Open& open) {
  if (!plan.relief.given) {
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
        open.not_yet(Topic::relief, fact("no_relief_valve"), {},
                     fact("buy_relief_valve", relief.set_pressure, relief.must_pass), kSection465, std::move(valve));
    if (part) finding.ways_to_mend = {{{"connections", "", part}}};
  } else {
    for (const ReliefValve& valve : plan.relief.valves) judge_setting(plan, valve, open);
    judge_capacity(plan, open);
  }
  judge_test(plan, open);
}

}  // namespace riserun::plan
