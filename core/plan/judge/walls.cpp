#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "quantity/nearly.h"
#include "reservoir/relief.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

constexpr const char* kCodeScope = "ASME BPVC Section VIII Div. 1, U-1(c)(2)(h)";

/// Set, reached, allowed by a relief valve, or tested with.
void judge_code(const Plan& plan, Open& open) {
  GaugePressure reached = std::max(plan.transfer.setting, plan.transfer.fill.highest_ullage_pressure);
  for (const ReliefValve& valve : plan.relief.valves) reached = std::max(reached, valve.full_flow);
  if (plan.job.test_pressure) reached = std::max(reached, *plan.job.test_pressure);
  if (reached >= kCodePressure)
    open.refuse(Topic::walls, fact("code_pressure", kCodePressure), Against{reached, kCodePressure},
                fact("stay_under_code_pressure", kCodePressure), kCodeScope);
}

/// A setting of the program's own may pass what keeps the factor by the relief valve that stands over it: what the
/// walls see is where that is fully open, its tolerance and its rise on top.
void judge_factor_in_relief(const Plan& plan, const Settled& settled, Open& open) {
  if (plan.relief.valves.empty()) return;
  const ReliefValve& valve =
      *std::min_element(plan.relief.valves.begin(), plan.relief.valves.end(),
                        [](const ReliefValve& a, const ReliefValve& b) { return a.full_flow < b.full_flow; });
  if (quantity::at_most(valve.full_flow, plan.walls.four_to_one) ||
      quantity::more_than(valve.full_flow, plan.walls.limit))
    return;  // what passes the limit has its own finding
  Finding& finding =
      open.not_yet(Topic::relief, fact("full_flow_passes_four_to_one", valve.connection, valve.opens, valve.full_flow),
                   Against{valve.full_flow, plan.walls.four_to_one}, fact("stiffer_walls_or_valve_of_less_tolerance"),
                   kFactorOfFour);
  finding.or_else = stiffer_for_four(plan, settled, valve.full_flow);
  if (const auto lower = lower_mark(plan, settled, valve)) {
    finding.mend = fact("valve_that_opens_at", *lower);
    finding.ways_to_try = {{{kReliefSetting, *lower}}};
  }
  const auto closer = closer_valve(plan, valve);
  for (const auto& mend : {closer ? closer : closer_and_sooner_valve(plan, valve), own_figures(plan, valve)})
    if (mend) mend_first_by({*mend}, finding);
  // The water of an overcharge is part of what the walls see, and that charge must go down in any case.
  if (plan.job.reservoir.charge && !quantity::at_most(kLeastAirSpace, plan.levels.ullage_fraction))
    mend_first_by({{fact("leave_charge_out"), {{{"reservoir.charge", ""}}}}}, finding);
}

/// A setting of the program's own does not pass what keeps the factor without a word.
void judge_factor(const Plan& plan, const Settled& settled, Open& open) {
  const TransferPlan& transfer = plan.transfer;
  const bool refused = transfer.setting > plan.walls.limit;
  if (transfer.setting_given || refused) return;
  if (transfer.setting <= plan.walls.four_to_one) {
    judge_factor_in_relief(plan, settled, open);
    return;
  }
  open.not_yet(Topic::walls, fact("setting_passes_four_to_one", transfer.setting, plan.walls.factor_at_set),
               Against{transfer.setting, plan.walls.four_to_one}, fact("stiffer_walls_or_own_setting"), kFactorOfFour)
      .or_else = stiffer_for_four(plan, settled, wanted_of_walls(plan));
}

void judge_baffles(const Plan& plan, Open& open) {
  const Supports& supports = plan.job.reservoir.supports;
  if (supports.passages.value_or(true)) return;
  const auto& layout = supports.layout;
  const bool baffled = !layout || layout->baffles_across + layout->baffles_along > 0;
  const bool bars = std::any_of(plan.walls.bars.begin(), plan.walls.bars.end(),
                                [](const reservoir::StayBars& each) { return each.wall == "floor"; });
  if (bars)
    open.not_yet(Topic::walls, fact("floor_stays_dam_the_water"), {}, fact("mouse_holes_in_floor_stays"),
                 "common practice")
        .ways_to_mend = {{{"reservoir.supports.passages", "yes"}}};
  if (!baffled) return;
  open.not_yet(Topic::walls, fact("baffles_are_tight", plan.leak_test.compartments), {},
               fact("crop_corners_of_baffles"), "common practice")
      .ways_to_mend = {{{"reservoir.supports.passages", "yes"}}};
}

/// Stays that nobody fits and welds into one tank: the panel was measured otherwise, or is a slip of the pen.
void judge_bare_panel(const Plan& plan, Open& open) {
  const auto& layout = plan.job.reservoir.supports.layout;
  if (!layout || !layout->bare) return;
  const reservoir::BarePanel& bare = *layout->bare;
  const Job& job = plan.job;
  const auto bays = [](Length wall, Length panel) { return std::max(1.0, std::round((wall / panel).value())); };
  // The panel's longer side lies along the lid's, so that there are the fewest.
  const double along = bays(std::max(job.reservoir.length, job.reservoir.width), std::max(bare.length, bare.width));
  const double across = bays(std::min(job.reservoir.length, job.reservoir.width), std::min(bare.length, bare.width));
  const double bars = (along - 1.0) + (across - 1.0);
  if (bars <= kMostBars) return;
  open.not_yet(Topic::walls, fact("bare_panel_of_a_forest", bare.length, bare.width, static_cast<int>(bars), kMostBars),
               {}, fact("measure_the_widest_bare_panel"), "common practice");
}

/// Bars that no shop has on its rack.
void judge_bars(const Plan& plan, Open& open) {
  for (const reservoir::StayBars& bars : plan.walls.bars)
    if (!(bars.height > metres(0.0)))
      open.not_yet(Topic::walls, fact("stay_beyond_flat_bar", bars.wall, bars.length, bars.load, plan.walls.loads_at),
                   {}, fact("baffles_or_shorter_bays"), "worked out");
}

Stress most_yield(reservoir::WeldMetal metal) {
  switch (metal) {
    case reservoir::WeldMetal::steel:
      return kMostYieldOfSteel;
    case reservoir::WeldMetal::stainless_steel:
      return kMostYieldOfStainless;
    case reservoir::WeldMetal::aluminium:
      return kMostYieldOfAluminium;
  }
  return kMostYieldOfSteel;
}

/// The walls' limit rests on it: a strength that no sheet has beside a weld is not believed.
void judge_yield(const Plan& plan, Open& open) {
  const auto& yield = plan.job.reservoir.yield;
  const Stress most = most_yield(plan.walls.metal.weld_metal);
  if (!yield || quantity::at_most(in_pascals(*yield), in_pascals(most))) return;
  open.not_yet(Topic::walls, fact("yield_of_no_welded_sheet", *yield), Against{*yield, most},
               fact("give_yield_as_welded"), "ASTM A572, ASTM A240, Aluminum Design Manual; from memory")
      .ways_to_mend = {{{"reservoir.yield"}}};
}

}  // namespace

void judge_walls(const Plan& plan, const Settled& settled, Open& open) {
  judge_code(plan, open);
  judge_factor(plan, settled, open);
  judge_baffles(plan, open);
  judge_bars(plan, open);
  judge_bare_panel(plan, open);
  judge_yield(plan, open);
}

}  // namespace riserun::plan
