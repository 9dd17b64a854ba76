#include "report/figures/figures.h"

namespace riserun::report {

namespace {

constexpr const char* kSolved =
    "Solved in time: water in reservoir and table, air in the ullage, regulator, receiver and line. Friction "
    "Colebrook-White, fittings Crane TP-410, inlet Idelchik. The range: all coefficients at one end of their published "
    "spread, and the air supply or the vent a tenth more or less.";

/// What a fill and a drain have in common.
std::vector<Figure> common_figures(const transfer::Transfer& transfer, const char* free_air) {
  return {{.key = "time",
           .label = "time",
           .value = transfer.time,
           .low = transfer.time_low,
           .high = transfer.time_high,
           .source = {kSolved, {}}},
          {.key = "moved", .label = "moved", .value = transfer.volume, .source = {kSolved, {}}},
          {.key = "mean_flow", .label = "mean flow", .value = transfer.mean_flow, .source = {kSolved, {}}},
          {.key = "peak_flow", .label = "greatest flow", .value = transfer.peak_flow, .source = {kSolved, {}}},
          {.key = "free_air", .label = free_air, .value = transfer.free_air, .form = "air", .source = {kSolved, {}}},
          {.key = "limited_by",
           .label = "limited by",
           .value = transfer.limited_by,
           .source = {"The resistance whose removal would save the most time.", {}}}};
}

}  // namespace

FigureGroup filling_figures(const plan::Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  FigureGroup group{"filling", "Filling", plan::Topic::transfer, common_figures(fill, "free air used")};
  const auto pressure = [&](std::string_view key, std::string_view label, GaugePressure value, Phrase source,
                            Phrase beside = {}) {
    group.figures.push_back({.key = key,
                             .label = label,
                             .value = value,
                             .limit = plan.walls.limit,
                             .beside = std::move(beside),
                             .source = std::move(source)});
  };
  pressure("set_pressure", "regulator setting", plan.transfer.setting,
           {"{0}.", {quantity::Facts{plan.transfer.setting_basis}}});
  pressure("pressure_to_start", "pressure to start", fill.pressure_to_start,
           {"Density of the water times gravity times the height from the charge to the table's inlet.", {}});
  pressure("hold_pressure", "hold pressure", fill.hold_pressure,
           {"Density of the water times gravity times the lift when the table is at its depth.", {}});
  pressure("pressure_to_finish", "pressure to finish", fill.pressure_to_finish,
           {"The least setting that reaches the wanted depth.", {}});
  pressure("highest_ullage_pressure", "highest in the tank", fill.highest_ullage_pressure, {kSolved, {}});
  if (plan.transfer.setting_for_wish)
    pressure("setting_for_wish", "for the wished time", *plan.transfer.setting_for_wish,
             {"The setting at which the fill takes as long as is wished.", {}});
  group.figures.push_back({.key = "shut_off_depth",
                           .label = "shut the air at",
                           .value = fill.shut_off_depth,
                           .beside = {"coasts up {0}", {fill.coast_up}},
                           .source = {"The air that is in the reservoir goes on pushing: from this depth it brings the "
                                      "table to the wanted depth.",
                                      {}}});
  group.figures.push_back({.key = "margin_over_riser_end",
                           .label = "water over the riser",
                           .value = fill.margin_over_riser_end,
                           .beside = {"left at the end", {}},
                           .source = {"Depth left in the reservoir less the height of the riser's end.", {}}});
  if (fill.self_limiting_pressure)
    pressure("self_limiting_pressure", "stops by itself at", *fill.self_limiting_pressure, {kSolved, {}},
             {"below the rim", {}});
  return group;
}

FigureGroup draining_figures(const plan::Plan& plan) {
  FigureGroup group{"draining", "Draining", plan::Topic::transfer,
                    common_figures(plan.transfer.drain, "free air let out")};
  group.figures.push_back({.key = "left_in_table",
                           .label = "stays in the table",
                           .value = plan.transfer.left_in_table,
                           .source = {"Below the inlet, after draining.", {}}});
  return group;
}

}  // namespace riserun::report
