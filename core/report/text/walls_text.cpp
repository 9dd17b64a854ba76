#include "report/text/plan_text.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

constexpr double kAskedFactor = 4.0;  // California Title 8, section 3301

std::string factor(double value) { return write_number(value, 2) + (value < kAskedFactor ? " (below 4)" : ""); }

std::string panel_table(const Plan& plan, UnitSystem units) {
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
         write_pressure_alone(result.limit, units), write_number(result.factor_on_yield, 2),
         result.small_deflection ? "" : "bulge over half the sheet: linear theory over-states it"});
  }
  return columns(rows, "  ", {5, 6});
}

std::string relief_rows(const Plan& plan, UnitSystem units) {
  const plan::ReliefPlan& relief = plan.relief;
  const std::string limit = fmt::format("   (walls' limit {})", write_pressure_alone(plan.walls.limit, units));
  std::string text;
  const auto row = [&](const std::string& name, const std::string& value) { text += named(name, value); };
  row("relief valve",
      fmt::format("set at {}{}, on the tank with no valve between", write_pressure(relief.set_pressure, units), limit));
  row("it must pass",
      write_air_flow(relief.must_pass, units) + " of free air: all that the feed gives if the regulator fails open");
  if (relief.valve_bore)
    row("which takes", "a relief valve of at least " + write_thickness(*relief.valve_bore, units, 2) + " clear bore");
  if (relief.failed_regulator_pressure)
    row("regulator failed open", fmt::format("the tank reaches {} with only the riser open{}",
                                             write_pressure(*relief.failed_regulator_pressure, units), limit));
  if (relief.restrictor_bore)
    row("restrictor", fmt::format("a {} hole in the feed keeps that below the limit",
                                  write_thickness(*relief.restrictor_bore, units, 2)));
  return text;
}

std::string standoff_row(const reservoir::StoredEnergy& energy, UnitSystem units) {
  return fmt::format("{}, {} of TNT; keep people {} away (ASME PCC-2: 30 m or {}, the greater)",
                     write_energy(energy.energy, units), write_mass(energy.tnt, units, 2),
                     write_long_length(energy.standoff, units), write_long_length(energy.formula_distance, units));
}

}  // namespace

std::string walls_text(const Plan& plan, const Style& style) {
  const plan::WallsPlan& walls = plan.walls;
  const UnitSystem units = style.units;
  std::string text = heading("Walls", style);
  text += wrapped(
      "  ", fmt::format("Checked at {} of air over the water; design stress {} ({}) in {}. Stress and bulge from "
                        "edges held to edges free; the limit is the lower of the two.",
                        write_pressure(walls.at_set.pressure, units), write_stress(walls.at_set.design_stress, units),
                        walls.at_set.design_stress_basis, walls.metal.name));
  text += panel_table(plan, units);
  text += wrapped(
      "  ",
      fmt::format("Walls' limit {}: {}. Factor of safety on yield: {} at the setting, {} at the full "
                  "supply of {}; on ultimate {} and {}. California Title 8 section 3301 asks 4 at the "
                  "greatest pressure. The air lifts the lid with {} at the setting.",
                  write_pressure(walls.limit, units), walls.at_set.panels[walls.at_set.weakest].panel.name,
                  factor(walls.factor_at_set), factor(walls.factor_at_full_supply),
                  write_pressure_alone(walls.full_supply, units), write_number(walls.factor_at_set_on_ultimate, 2),
                  write_number(walls.factor_at_full_supply_on_ultimate, 2), write_force(walls.lid_force, units)));
  if (walls.next_stay)
    text += wrapped(
        "  ", fmt::format("What pays most is {}: then the {} governs, bare {} x {}, and the limit rises from {} to {}.",
                          walls.next_stay->what, walls.next_stay->panel, write_length(walls.next_stay->length, units),
                          write_length(walls.next_stay->width, units),
                          write_pressure_alone(walls.next_stay->limit_before, units),
                          write_pressure_alone(walls.next_stay->limit_after, units)));
  if (walls.stayed_limit)
    text += wrapped("  ", fmt::format("Cross-check by the stayed-surface rule p = t^2 S C / pitch^2: {}.",
                                      write_pressure_alone(*walls.stayed_limit, units)));
  text += relief_rows(plan, units);
  return text + remarks_text(plan, plan::Topic::walls) + remarks_text(plan, plan::Topic::relief);
}

std::string leak_test_text(const Plan& plan, const Style& style) {
  const plan::LeakTestPlan& test = plan.leak_test;
  const UnitSystem units = style.units;
  std::string text = heading("Leak test", style);
  const auto row = [&](const std::string& name, const std::string& value) { text += named(name, value); };
  row("pressure", fmt::format("{}   (walls' limit {}): {}", write_pressure(test.pressure, units),
                              write_pressure_alone(plan.walls.limit, units), test.basis));
  row("gauge to use", "0 to " + write_pressure_alone(test.gauge_full_scale, units));
  row("relief in the test line", write_pressure(test.relief, units));
  row("air and gauge go in at", test.air_port);
  for (const plan::TestPlug& plug : test.plugs) {
    const std::string part = plug.part ? plan.catalog->part(*plug.part).name + (plug.from_bin ? " (bin)" : "")
                                       : "nothing in the catalog closes it";
    row("plug " + plug.port, part);
  }
  row("air in the empty tank", write_volume(test.air_volume, units));
  row("stored energy, testing", standoff_row(test.energy, units));
  row("stored energy, in use", standoff_row(test.energy_in_use, units));
  return text + remarks_text(plan, plan::Topic::leak_test);
}

}  // namespace riserun::report
