#include "hydraulics/fluid.h"

#include <cmath>

namespace riserun::hydraulics {
namespace {

/// One term coefficient * x^exponent of a published sum.
struct Term {
  double coefficient;
  int exponent;
};

template <std::size_t Count>
double sum(const Term (&terms)[Count], double x) {
  double total = 0.0;
  for (const Term& term : terms) total += term.coefficient * std::pow(x, term.exponent);
  return total;
}

/// Density [kg/m^3] at a temperature [K]: the specific volume at 0.1 MPa and its slope with pressure, IAPWS
/// SR6-08(2011), equations 2 and 3 with the coefficients of its table 1.
double water_density(double temperature) {
  constexpr double kGasConstant = 461.51805;      // J/(kg K), section 2
  constexpr double kReferenceTemperature = 10.0;  // K
  constexpr double kReferencePressure = 1.0e5;    // Pa
  constexpr Term kVolumeHot[] = {
      {6.74458446e3, 4}, {-2.22521604e5, 5}, {1.00231247e8, 7}, {-1.63552118e9, 8}, {8.32299658e9, 9}};
  constexpr Term kVolumeCold[] = {{5.78545292e-3, 1},  {-1.53195665e-2, 2}, {3.11337859e-2, 3},
                                  {-4.23546241e-2, 4}, {3.38713507e-2, 5},  {-1.19946761e-2, 6}};
  constexpr double kVolumeConstant = 1.93763157e-2;
  constexpr Term kSlopeHot[] = {
      {-7.5245878e-6, 1}, {-1.3767418e-2, 3}, {1.0627293e1, 5}, {-2.0457795e2, 6}, {1.2037414e3, 7}};
  constexpr Term kSlopeCold[] = {{-3.1091470e-6, 1}, {2.8964919e-5, 3}, {-1.3112763e-4, 4}, {3.0410453e-4, 5},
                                 {-3.9034594e-4, 6}, {2.3403117e-4, 7}, {-4.8510101e-5, 9}};
  const double hot = kReferenceTemperature / (593.0 - temperature);
  const double cold = kReferenceTemperature / (temperature - 232.0);
  const double scale = kGasConstant * kReferenceTemperature / kReferencePressure;  // m^3/kg
  const double volume = scale * (kVolumeConstant + sum(kVolumeHot, hot) + sum(kVolumeCold, cold));
  const double slope = scale / kReferencePressure * (sum(kSlopeHot, hot) + sum(kSlopeCold, cold));  // m^3/(kg Pa)
  return 1.0 / (volume + slope * (quantity::kStandardAtmosphere - kReferencePressure));
}

/// Viscosity [Pa s] of liquid water at 0.1 MPa, IAPWS SR6-08(2011), equation 7 with table 4.
double water_viscosity(double temperature) {
  const double reduced = temperature / 300.0;
  return 1.0e-6 * (280.68 * std::pow(reduced, -1.9) + 511.45 * std::pow(reduced, -7.7) +
                   61.131 * std::pow(reduced, -19.6) + 0.45903 * std::pow(reduced, -40.0));
}

/// Saturation pressure [Pa], IAPWS R7-97(2012), equation 30 with table 34.
double saturation_pressure(double temperature) {
  const double theta = temperature - 0.23855557567849 / (temperature - 0.65017534844798e3);
  const double a = theta * theta + 0.11670521452767e4 * theta - 0.72421316703206e6;
  const double b = -0.17073846940092e2 * theta * theta + 0.12020824702470e5 * theta - 0.32325550322333e7;
  const double c = 0.14915108613530e2 * theta * theta - 0.48232657361591e4 * theta + 0.40511340542057e6;
  return 1.0e6 * std::pow(2.0 * c / (-b + std::sqrt(b * b - 4.0 * a * c)), 4);
}

}  // namespace

std::optional<Water> water_at(Temperature temperature) {
  // Half a microkelvin of grace, so that a limit that went through another unit still counts as the limit.
  constexpr double kGrace = 5.0e-7;
  const double celsius = in_degrees_celsius(temperature);
  if (!(celsius >= -kGrace && celsius <= 80.0 + kGrace)) return std::nullopt;
  const double kelvin = in_kelvins(temperature);
  return Water{kilograms_per_cubic_metre(water_density(kelvin)), pascal_seconds(water_viscosity(kelvin)),
               absolute_pascals(saturation_pressure(kelvin))};
}

Water with_propylene_glycol(Water water, double share) {
  constexpr double kDenser = 0.08;  // of the density, for a share of 1
  constexpr double kMoreViscous = 4.0;
  water.density = water.density * (1.0 + kDenser * share);
  water.viscosity = water.viscosity * (1.0 + kMoreViscous * share);
  return water;
}

Density air_density(AbsolutePressure pressure, Temperature temperature) {
  return kilograms_per_cubic_metre(in_pascals(pressure) / (kAirGasConstant * in_kelvins(temperature)));
}

AbsolutePressure vapour_pressure(Temperature temperature) {
  const double celsius = in_degrees_celsius(temperature);
  if (celsius >= 0.0) return absolute_pascals(saturation_pressure(in_kelvins(temperature)));
  return absolute_pascals(611.2 * std::exp(22.46 * celsius / (272.62 + celsius)));
}

PressureDifference vacuum_of_cooling(Temperature warm, Temperature cold, AbsolutePressure atmosphere) {
  const double dry = in_pascals(atmosphere) - in_pascals(vapour_pressure(warm));
  const double left = dry * in_kelvins(cold) / in_kelvins(warm) + in_pascals(vapour_pressure(cold));
  return pascals(in_pascals(atmosphere) - left);
}

DynamicViscosity air_viscosity(Temperature temperature) {
  const double kelvin = in_kelvins(temperature);
  return pascal_seconds(1.458e-6 * kelvin * std::sqrt(kelvin) / (kelvin + 110.4));
}

std::optional<AbsolutePressure> atmosphere_at(Length altitude) {
  constexpr double kLapse = 0.0065;     // K/m, ISO 2533
  constexpr double kSeaLevel = 288.15;  // K, ISO 2533
  const double metres_up = in_metres(altitude);
  if (!(metres_up >= -500.0 && metres_up <= 11000.0)) return std::nullopt;
  const double exponent = quantity::kStandardGravity / (kLapse * kAirGasConstant);
  return absolute_pascals(quantity::kStandardAtmosphere * std::pow(1.0 - kLapse * metres_up / kSeaLevel, exponent));
}

}  // namespace riserun::hydraulics
