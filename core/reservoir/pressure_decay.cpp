#include "reservoir/pressure_decay.h"

#include "hydraulics/air.h"

#include <array>
#include <cassert>

namespace riserun::reservoir {

namespace {

constexpr std::array<GaugeGrade, 8> kGrades = {{{"4A", 0.1, 0.1, 0.1},
                                                {"3A", 0.25, 0.25, 0.25},
                                                {"2A", 0.5, 0.5, 0.5},
                                                {"1A", 1.0, 1.0, 1.0},
                                                {"A", 2.0, 1.0, 2.0},
                                                {"B", 3.0, 2.0, 3.0},
                                                {"C", 4.0, 3.0, 4.0},
                                                {"D", 5.0, 5.0, 5.0}}};
constexpr std::size_t kShopGrade = 5;
constexpr double kThinHole = 0.6;  // discharge coefficient

}  // namespace

PressureDifference drift_per_kelvin(GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature) {
  return pascals(in_pascals(absolute(pressure, atmosphere)) / in_kelvins(temperature));
}

GaugePressure at_first_temperature(GaugePressure later, Temperature then, Temperature first,
                                   AbsolutePressure atmosphere) {
  const double pascal = in_pascals(absolute(later, atmosphere)) * in_kelvins(first) / in_kelvins(then);
  return gauge_pascals(pascal - in_pascals(atmosphere));
}

VolumeFlow leak_rate(Volume air, PressureDifference drop, Time hold, AbsolutePressure atmosphere) {
  assert(hold > seconds(0.0));
  return air * (drop.in_si() / in_pascals(atmosphere)) / hold;
}

Length hole_that_leaks(VolumeFlow leak, GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature) {
  const MassFlow flow = hydraulics::mass_flow_of_free_air(leak, atmosphere, temperature);
  return hydraulics::bore_for_air_flow(flow, kThinHole, absolute(pressure, atmosphere), atmosphere, temperature);
}

std::span<const GaugeGrade> gauge_grades() { return kGrades; }

const GaugeGrade& shop_gauge_grade() { return kGrades[kShopGrade]; }

PressureDifference gauge_error(const GaugeGrade& grade, GaugePressure full_scale, GaugePressure pressure) {
  assert(full_scale > GaugePressure() && pressure <= full_scale);
  const double share = in_pascals(pressure) / in_pascals(full_scale);
  const double percent = share < 0.25 ? grade.lower : share > 0.75 ? grade.upper : grade.middle;
  return pascals(in_pascals(full_scale) * percent / 100.0);
}

}  // namespace riserun::reservoir
