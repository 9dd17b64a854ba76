#include "report/figures/figures.h"

namespace riserun::report {

FigureGroup levels_figures(const plan::Plan& plan) {
  const plan::Levels& levels = plan.levels;
  static constexpr const char* kArea = "Free area of the box, supports taken off, times the depth.";
  static constexpr const char* kTable = "Free area of the table times the depth.";
  static constexpr const char* kLift = "Height between the two water surfaces.";
  FigureGroup group{"levels", "Levels", plan::Topic::levels, {}};
  group.figures = {
      {.key = "charge_depth",
       .label = "charge (water down)",
       .value = levels.charge_depth,
       .also = levels.charge,
       .source = {kArea, {}}},
      {.key = "charge_mark_below_lid",
       .label = "charge line below the lid",
       .value = levels.charge_mark_below_lid,
       .source = {"Inside height less the charge.", {}}},
      {.key = "top_up_mark",
       .label = "top up below",
       .value = levels.top_up_mark,
       .beside = {"water down; a day takes {0:fixed1}", {levels.days_loss}},
       .source = {"What a fill takes, and one bore of water over the riser's end.", {}}},
      {.key = "air_space_depth",
       .label = "air space over it",
       .value = plan.job.reservoir.height - levels.charge_depth,
       .also = levels.ullage_at_charge,
       .beside = {"{0:2} % of the reservoir", {100.0 * levels.ullage_fraction}},
       .source = {kArea, {}}},
      {.key = "table_depth",
       .label = "table needs",
       .value = levels.table_depth,
       .also = levels.need,
       .source = {kTable, {}}},
      {.key = "usable",
       .label = "riser can lift",
       .value = levels.usable,
       .beside = {"down to {0} over the riser's end", {levels.uncover_margin}},
       .source = {"From the charge down to where, at 1 m/s in the riser, the dip of the surface reaches its end: 0.69 "
                  "(Q^2/g)^0.2.",
                  {}}},
      {.key = "reservoir_depth_up",
       .label = "reservoir, water up",
       .value = levels.reservoir_depth_up,
       .source = {"What is left in the reservoir over its free area.", {}}},
      {.key = "heel_depth",
       .label = "heel below the riser",
       .value = plan.riser.riser.end_height,
       .also = levels.heel,
       .beside = {"stays behind", {}},
       .source = {kArea, {}}},
      {.key = "rim",
       .label = "table to the rim",
       .value = levels.rim,
       .also = levels.rim_capacity,
       .source = {kTable, {}}},
      {.key = "left_in_table",
       .label = "stays in the table",
       .value = plan.transfer.left_in_table,
       .beside = {"after draining", {}},
       .source = {"Below the inlet, and the film that stays on the floor, after draining.", {}}},
      {.key = "lift_start", .label = "lift at the start", .value = levels.lift_start, .source = {kLift, {}}},
      {.key = "lift_full", .label = "lift with the table full", .value = levels.lift_full, .source = {kLift, {}}}};
  if (levels.can_overflow)
    group.figures.push_back({.key = "self_limiting_charge",
                             .label = "charge that cannot overflow it",
                             .value = levels.self_limiting_charge,
                             .beside = {"or less", {}},
                             .source = {"At this charge the riser uncovers before the table is full to its rim.", {}}});
  return group;
}

}  // namespace riserun::report
