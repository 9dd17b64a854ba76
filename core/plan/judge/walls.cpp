#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/stiffer.h"
#include "plan/settle/wall_request.h"
#include "quantity/nearly.h"
#include "reservoir/relief.h"

#include <algorithm>

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

/// A setting of the program's own does not pass what keeps the factor without a word.
void judge_factor(const Plan& plan, const Settled& settled, Open& open) {
  const TransferPlan& transfer = plan.transfer;
  const bool refused = transfer.setting > plan.walls.limit;
  if (transfer.setting_given || refused || transfer.setting <= plan.walls.four_to_one) return;
  open.not_yet(Topic::walls, fact("setting_passes_four_to_one", transfer.setting, plan.walls.factor_at_set),
               Against{transfer.setting, plan.walls.four_to_one}, fact("stiffer_walls_or_own_setting"),
               "California Code of Regulations, Title 8, section 3301(e)")
      .or_else =
      stiffer_walls(plan.job, settled, plan.levels.charge_depth, transfer.setting, quarter_of_yield(settled));
}

void judge_baffles(const Plan& plan, Open& open) {
  const Supports& supports = plan.job.reservoir.supports;
  if (supports.passages.value_or(true)) return;
  open.not_yet(Topic::walls, fact("baffles_are_tight", plan.leak_test.compartments), {},
               fact("crop_corners_of_baffles"), "common practice")
      .ways_to_mend = {{{"reservoir.supports.passages", "yes"}}};
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
  judge_yield(plan, open);
}

}  // namespace riserun::plan
