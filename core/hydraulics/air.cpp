#include "hydraulics/air.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

constexpr double kShrink = (kAirHeatRatio - 1.0) / kAirHeatRatio;

struct FlowFunction {
  double value;  // sqrt(r^(2/g) - r^((g+1)/g)) [-]
  double slope;  // its derivative with respect to the pressure difference over the higher pressure
};

/// @param drop pressure difference over the higher pressure, (0, 1]
FlowFunction flow_function(double drop) {
  const double choked_drop = 1.0 - critical_pressure_ratio();
  if (drop >= choked_drop) drop = choked_drop;
  const double log_ratio = std::log1p(-drop);
  // r^(2/g) (1 - r^((g-1)/g)), without the cancellation near r = 1.
  const double value = std::sqrt(std::exp(2.0 / kAirHeatRatio * log_ratio) * -std::expm1(kShrink * log_ratio));
  const double ratio = 1.0 - drop;
  const double inner_slope = -2.0 / kAirHeatRatio * std::pow(ratio, 2.0 / kAirHeatRatio - 1.0) +
                             (kAirHeatRatio + 1.0) / kAirHeatRatio * std::pow(ratio, 1.0 / kAirHeatRatio);
  return {value, inner_slope / (2.0 * value)};
}

/// The odd cubic a x + b x^3 that joins the flow function at kSmoothPressureShare.
double smooth_flow_function(double drop) {
  static const FlowFunction join = flow_function(kSmoothPressureShare);
  const double x = drop / kSmoothPressureShare;
  const double end_slope = join.slope * kSmoothPressureShare;
  return x * (0.5 * (3.0 * join.value - end_slope) + x * x * 0.5 * (end_slope - join.value));
}

}  // namespace

double critical_pressure_ratio() {
  static const double ratio = std::pow(2.0 / (kAirHeatRatio + 1.0), 1.0 / kShrink);
  return ratio;
}

double orifice_air_flow(double effective_area, double from, double to, double temperature_from, double temperature_to) {
  assert(effective_area >= 0.0 && from >= 0.0 && to >= 0.0);
  if (from < to) return -orifice_air_flow(effective_area, to, from, temperature_to, temperature_from);
  if (from == to) return 0.0;
  const double drop = (from - to) / from;
  const double function = drop < kSmoothPressureShare ? smooth_flow_function(drop) : flow_function(drop).value;
  return effective_area * from * std::sqrt(2.0 / (kShrink * kAirGasConstant * temperature_from)) * function;
}

MassFlow orifice_air_flow(Area effective_area, AbsolutePressure from, AbsolutePressure to, Temperature temperature) {
  const double kelvin = in_kelvins(temperature);
  return kilograms_per_second(
      orifice_air_flow(in_square_metres(effective_area), in_pascals(from), in_pascals(to), kelvin, kelvin));
}

Area effective_area(Length bore, double discharge_coefficient) {
  return discharge_coefficient * std::numbers::pi / 4.0 * bore * bore;
}

Length bore_for_air_flow(MassFlow flow, double discharge_coefficient, AbsolutePressure from, AbsolutePressure to,
                         Temperature temperature) {
  assert(from > to && discharge_coefficient > 0.0 && flow >= MassFlow());
  const MassFlow through_unit_area = orifice_air_flow(square_metres(discharge_coefficient), from, to, temperature);
  const double area = flow / through_unit_area;  // m^2
  return metres(std::sqrt(4.0 * area / std::numbers::pi));
}

MassFlow mass_flow_of_free_air(VolumeFlow free_air, AbsolutePressure atmosphere, Temperature temperature) {
  return free_air * air_density(atmosphere, temperature);
}

VolumeFlow free_air_of_mass_flow(MassFlow flow, AbsolutePressure atmosphere, Temperature temperature) {
  return flow / air_density(atmosphere, temperature);
}

Volume free_air_of_mass(Mass mass, AbsolutePressure atmosphere, Temperature temperature) {
  return mass / air_density(atmosphere, temperature);
}

}  // namespace riserun::hydraulics
