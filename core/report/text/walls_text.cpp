#include "report/text/figure_rows.h"
#include "report/text/plan_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

constexpr double kAskedFactor = 4.0;  // California Title 8, section 3301

std::string factor(const Figure& figure, UnitSystem units) {
  return written(figure, units) + (std::get<double>(figure.value) < kAskedFactor ? " (below 4)" : "");
}

std::string panel_table(const Plan& plan, const Style& style) {
  const UnitSystem units = style.units;
  std::vector<std::vector<std::string>> rows = {
      {"panel", "bare size", "sheet", "stress", "bulge", "limit", "factor", ""}};
  for (const reservoir::PanelResult& result : plan.walls.at_set.panels) {
    const reservoir::Panel& panel = result.panel;
    rows.push_back(
        {panel.name, write_length(panel.length, units) + " x " + write_length(panel.width, units),
         write_thickness(panel.thickness, units),
         write_range(write_stress(std::min(result.stress_held, result.stress_free), units),
                     write_stress(std::max(result.stress_held, result.stress_free), units)),
         write_range(write_thickness(result.bulge_held, units, 2), write_thickness(result.bulge_free, units, 2)),
         write_pressure_alone(result.limit, units), write_factor(result.factor_on_yield),
         result.small_deflection ? "" : "bulge over half the sheet: linear theory over-states it"});
  }
  const plan::WallsPlan& walls = plan.walls;
  if (walls.span_limit)
    rows.push_back({reservoir::kStayedSpan, write_length(walls.stayed->pitch, units),
                    write_thickness(walls.stayed->thickness, units), "", "",
                    write_pressure_alone(*walls.span_limit, units),
                    walls.weakest == reservoir::kStayedSpan ? write_factor(walls.factor_at_set) : "",
                    "by the stayed-surface rule"});
  return table(rows, "  ", {5, 6}, style.width);
}

/// What holds the walls: loads, welds, vacuum, and how close stays must stand.
std::string support_rows(const FigureGroup& walls, const Style& style) {
  const UnitSystem units = style.units;
  FigureRows rows(walls, style);
  for (const char* key : {"stays_for_use", "stays_for_four"})
    if (const Figure* stays = walls.find(key))
      rows.line(std::string(stays->label), said(stays->beside, units) + ": limit " + written(*stays, units));
  for (const char* key :
       {"vacuum_limit", "cooling_vacuum", "row_across", "row_along", "post", "weld_of_row", "weld_of_edge", "weld_leg",
        "weld_of_post", "post_weld_leg", "passage_at_floor", "passage_at_lid"})
    if (const Figure* figure = walls.find(key))
      rows.line(std::string(figure->label), written(*figure, units) + " " + said(figure->beside, units));
  return rows.text();
}

std::string relief_rows(const Plan& plan, const Style& style) {
  FigureRows rows(relief_figures(plan), style);
  rows.figure("set_pressure", "set at ", ", on the tank with no valve between");
  rows.figure("must_pass", "", " of free air: all that the feed gives if the regulator fails open");
  rows.figure_if_any("valve_bore", "a relief valve of at least ", " clear bore");
  if (plan.relief.failed_regulator_pressure)
    rows.line(rows.label("failed_regulator_pressure"),
              fmt::format("the tank would reach {} with the riser open and no relief valve   ({})",
                          rows.value("failed_regulator_pressure"), rows.limit("failed_regulator_pressure")));
  rows.figure("greatest", "",
              ", the regulator failed and the riser stopped; factor on yield " + rows.value("factor_at_greatest") +
                  ", and " + rows.value("lid_force_at_greatest") + " on the lid");
  rows.figure_if_any("restrictor_bore", "a ", " hole right before the regulator keeps that within the limit");
  rows.figure_if_any("pressure_with_restrictor");
  rows.figure_if_any("fill_time_with_restrictor");
  return rows.text();
}

}  // namespace

std::string walls_text(const Plan& plan, const Style& style) {
  const plan::WallsPlan& walls = plan.walls;
  const UnitSystem units = style.units;
  const FigureGroup figures = walls_figures(plan);
  std::string text = heading("Walls", style);
  text += wrapped("  ",
                  fmt::format("Checked at {} of air over the water; design stress {} ({}) in {}. Stress and bulge from "
                              "edges held to edges free; the limit is the lower of the two.",
                              written(figures["checked_at"], units), written(figures["design_stress"], units),
                              say(walls.at_set.design_stress_basis, units), walls.metal.name),
                  style.width);
  text += panel_table(plan, style);
  text += wrapped(
      "  ",
      fmt::format("Walls' limit {}: {}; 4 to 1 up to {}. Factor of safety on yield: {} at the setting, {} at the full "
                  "supply of {}; on ultimate {} and {}. California Title 8 section 3301 asks 4 at the "
                  "greatest pressure. The air lifts the lid with {} at the setting.",
                  written(figures["limit"], units), said(figures["limit"].beside, units),
                  written(figures["four_to_one"], units), factor(figures["factor_at_set"], units),
                  factor(figures["factor_at_full_supply"], units), write_pressure_alone(walls.full_supply, units),
                  written(figures["factor_at_set_on_ultimate"], units),
                  written(figures["factor_at_full_supply_on_ultimate"], units), written(figures["lid_force"], units)),
      style.width);
  if (walls.next_stay)
    text += wrapped(
        "  ",
        fmt::format("What pays most is {}: then the {} governs, bare {} x {}, and the limit rises from {} to {}.",
                    walls.next_stay->what, walls.next_stay->panel, write_length(walls.next_stay->length, units),
                    write_length(walls.next_stay->width, units),
                    write_pressure_alone(walls.next_stay->limit_before, units),
                    written(figures["limit_with_next_stay"], units)),
        style.width);
  if (walls.stayed_limit)
    text += wrapped("  ",
                    fmt::format("Cross-check by the stayed-surface rule p = t^2 S C / pitch^2: {}.",
                                written(figures["stayed_limit"], units)),
                    style.width);
  text += support_rows(figures, style);
  text += relief_rows(plan, style);
  return text + remarks_text(plan, plan::Topic::walls, style) + remarks_text(plan, plan::Topic::relief, style);
}

}  // namespace riserun::report
