#include "reservoir/relief.h"

#include "hydraulics/air.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace riserun::reservoir {
namespace {

using quantity::more_than;

GaugePressure scaled(GaugePressure p, double factor) { return gauge_pascals(in_pascals(p) * factor); }

MassFlow feed_flow(const AirFeed& feed, GaugePressure downstream, AbsolutePressure atmosphere) {
  return feed.line.flow(absolute(feed.supply, atmosphere), absolute(downstream, atmosphere), feed.temperature);
}

// Usual dials, from memory: low ranges are capsule or diaphragm gauges. Neighbours stand within 8/3 of each other from
// 1 psi up, so that one always falls between 1.5 and 4 times the pressure.
constexpr std::array kDialsPsi = {1.0, 2.0, 3.0, 5.0, 10.0, 15.0, 30.0, 60.0, 100.0, 160.0, 200.0, 300.0};

std::optional<GaugePressure> usual_dial(const GaugeChoice& choice) {
  std::optional<GaugePressure> best;
  for (const double dial : kDialsPsi) {
    const GaugePressure scale = psig(dial);
    if (more_than(choice.least_full_scale, scale) || more_than(scale, choice.most_full_scale)) continue;
    if (!best || more_than(choice.preferred_full_scale, *best))
      best = scale;  // the first at or above twice, else the nearest
  }
  return best;
}

PressureDifference widest_mark(GaugePressure pressure) {
  if (quantity::at_most(pressure, psig(10.0))) return psi(0.1);
  return quantity::at_most(pressure, psig(100.0)) ? psi(1.0) : psi(2.0);
}

constexpr double kOverUse = 1.25;
const PressureDifference kLeastOverUse = psi(0.25);

}  // namespace

std::optional<GaugePressure> relief_setting(GaugePressure in_use, GaugePressure wall_limit) {
  if (quantity::at_most(wall_limit, in_use)) return std::nullopt;
  return std::min(wall_limit, std::max(scaled(in_use, kOverUse), in_use + kLeastOverUse));
}

GaugePressure least_relieved_by(GaugePressure opens) {
  return std::min(scaled(opens, 1.0 / kOverUse), opens - kLeastOverUse);
}

Relief relief_for(GaugePressure setting, GaugePressure wall_limit, const AirFeed& feed, AbsolutePressure atmosphere,
                  double valve_discharge_coefficient) {
  assert(setting > GaugePressure() && setting <= wall_limit);
  const GaugePressure open = std::min(wall_limit, scaled(setting, 1.1));
  const MassFlow flow = feed_flow(feed, open, atmosphere);
  if (in_kilograms_per_second(flow) <= 0.0) return {.setting = setting};  // the supply cannot reach the setting
  return {setting, hydraulics::free_air_of_mass_flow(flow, atmosphere, feed.temperature),
          hydraulics::bore_for_air_flow(flow, valve_discharge_coefficient, absolute(open, atmosphere), atmosphere,
                                        feed.temperature)};
}

SafetyFactors safety_factors(const std::vector<Panel>& panels, const SheetMetal& metal, GaugePressure set,
                             GaugePressure supply, const std::optional<StayedSurface>& stayed) {
  const WallCheck at_set = check_walls(panels, metal, metal.yield, {}, set);
  const WallCheck at_supply = check_walls(panels, metal, metal.yield, {}, supply);
  const auto least = [&](double of_panels, Stress strength, GaugePressure air) {
    if (!stayed) return of_panels;
    const PressureDifference stands = stayed_plate_limit(stayed->thickness, stayed->pitch, strength);
    return std::min(of_panels, stands / (air - GaugePressure() + stayed->water));
  };
  return {set,
          supply,
          least(at_set.factor_on_yield, metal.yield, set),
          least(at_set.factor_on_ultimate, metal.ultimate, set),
          least(at_supply.factor_on_yield, metal.yield, supply),
          least(at_supply.factor_on_ultimate, metal.ultimate, supply)};
}

GaugeChoice choose_gauge(GaugePressure pressure) {
  GaugeChoice choice{scaled(pressure, 1.5), scaled(pressure, 2.0), scaled(pressure, 4.0), std::nullopt,
                     widest_mark(pressure)};
  choice.full_scale = usual_dial(choice);
  return choice;
}

WaterColumn water_column_for(GaugePressure pressure, Density water) {
  const Length kFreeHose = inches(6.0);
  const Head reading = head_of(pressure - GaugePressure(), water);
  const Length leg = metres(in_metres(reading)) + kFreeHose;
  return {reading, leg, 2.0 * leg};
}

}  // namespace riserun::reservoir
