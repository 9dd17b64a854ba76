#include "reservoir/walls.h"

#include "quantity/nearly.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <limits>
#include <map>
#include <utility>

namespace riserun::reservoir {
namespace {

/// A panel under 1 Pa, for one way of holding its edges.
struct UnitLoad {
  double stress;  // Pa per Pa
  double bulge;   // m per Pa
};

UnitLoad unit_load(const PlateCoefficients& plate, double width, double thickness, const SheetMetal& metal) {
  const double nu = metal.poisson_ratio;
  const double slenderness = width / thickness;
  const double stiffness =
      in_pascals(metal.elastic_modulus) * thickness * thickness * thickness / (12.0 * (1.0 - nu * nu));  // N m
  return {6.0 * plate.beta_greatest() * slenderness * slenderness,
          plate.alpha_centre * width * width * width * width / stiffness};
}

/// Plates that are alike are solved once: walls of one shape are asked for again with each mend that is tried.
const PlateCoefficients& held_plate_once(double ratio, double poisson_ratio) {
  constexpr std::size_t kMostKept = 4096;
  thread_local std::map<std::pair<double, double>, PlateCoefficients> solved;
  if (solved.size() >= kMostKept) solved.clear();
  const auto [found, is_new] = solved.try_emplace({ratio, poisson_ratio});
  if (is_new) found->second = held_plate(ratio, poisson_ratio);
  return found->second;
}

GaugePressure air_limit(double design_stress, const UnitLoad& load, PressureDifference water) {
  return gauge_pascals(std::max(0.0, design_stress / load.stress - in_pascals(water)));
}

double factor(Stress strength, Stress stress) {
  return in_pascals(stress) > 0.0 ? strength / stress : std::numeric_limits<double>::infinity();
}

PanelResult check_panel(const Panel& panel, const SheetMetal& metal, Stress design_stress, GaugePressure pressure) {
  const double longer = std::max(in_metres(panel.length), in_metres(panel.width));
  const double width = std::min(in_metres(panel.length), in_metres(panel.width));
  const double thickness = in_metres(panel.thickness);
  assert(width > 0.0 && thickness > 0.0);
  const double ratio = longer / width;
  const UnitLoad held = unit_load(held_plate_once(ratio, metal.poisson_ratio), width, thickness, metal);
  const UnitLoad free = unit_load(free_plate(ratio, metal.poisson_ratio), width, thickness, metal);
  const double load = in_pascals(pressure) + in_pascals(panel.water);
  const double design = in_pascals(design_stress);

  PanelResult result;
  result.panel = panel;
  result.stress_held = stress_pascals(held.stress * load);
  result.stress_free = stress_pascals(free.stress * load);
  result.bulge_held = metres(held.bulge * load);
  result.bulge_free = metres(free.bulge * load);
  result.limit_held = air_limit(design, held, panel.water);
  result.limit_free = air_limit(design, free, panel.water);
  result.limit = std::min(result.limit_held, result.limit_free);
  result.vacuum_limit = std::min(air_limit(design, held, pascals(0.0)), air_limit(design, free, pascals(0.0)));
  result.small_deflection = in_metres(result.bulge()) <= thickness / 2.0;
  const double load_at_limit = in_pascals(result.limit) + in_pascals(panel.water);
  result.small_deflection_at_limit = std::max(held.bulge, free.bulge) * load_at_limit <= thickness / 2.0;
  result.factor_on_yield = factor(metal.yield, result.stress());
  result.factor_on_ultimate = factor(metal.ultimate, result.stress());
  return result;
}

}  // namespace

WallCheck check_walls(const std::vector<Panel>& panels, const SheetMetal& metal, Stress design_stress,
                      quantity::Fact design_stress_basis, GaugePressure pressure) {
  assert(!panels.empty() && in_pascals(design_stress) > 0.0);
  WallCheck check;
  check.pressure = pressure;
  check.design_stress = design_stress;
  check.design_stress_basis = std::move(design_stress_basis);
  for (const Panel& panel : panels) check.panels.push_back(check_panel(panel, metal, design_stress, pressure));
  const auto weaker = [](const PanelResult& a, const PanelResult& b) { return quantity::more_than(b.limit, a.limit); };
  const auto weakest = std::min_element(check.panels.begin(), check.panels.end(), weaker);
  check.weakest = static_cast<std::size_t>(weakest - check.panels.begin());
  check.limit = weakest->limit;
  check.vacuum_limit = weakest->vacuum_limit;
  check.factor_on_yield = weakest->factor_on_yield;
  check.factor_on_ultimate = weakest->factor_on_ultimate;
  for (const PanelResult& result : check.panels) {
    check.vacuum_limit = std::min(check.vacuum_limit, result.vacuum_limit);
    check.factor_on_yield = std::min(check.factor_on_yield, result.factor_on_yield);
    check.factor_on_ultimate = std::min(check.factor_on_ultimate, result.factor_on_ultimate);
  }
  return check;
}

PressureDifference stayed_plate_limit(Length thickness, Length pitch, Stress design_stress, double c) {
  const double slimness = in_metres(thickness) / in_metres(pitch);
  return pascals(slimness * slimness * in_pascals(design_stress) * c);
}

Length stayed_plate_pitch(Length thickness, PressureDifference pressure, Stress design_stress, double c) {
  return thickness * std::sqrt(c * in_pascals(design_stress) / in_pascals(pressure));
}

}  // namespace riserun::reservoir
