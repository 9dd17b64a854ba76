#include "hydraulics/minor_losses.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

// Water at 60 degF, to which specific gravity refers: 999.016 kg/m^3 (62.366 lb/ft^3).
constexpr double kGravityReference = 999.016;
constexpr double kPsi = quantity::kPascalsPerPsi;
constexpr double kGallonsPerMinute = quantity::kCubicMetresPerUsGallon / 60.0;  // m^3/s

double share_of_area(Length small_bore, Length large_bore) {
  assert(small_bore > Length() && small_bore <= large_bore);
  const double beta = small_bore / large_bore;
  return beta * beta;
}

/// K Cv^2 [-] of a bore: 2 A^2 (1 psi) / (rho (1 gpm)^2).
double valve_constant(Length bore) {
  assert(bore > Length());
  const double area = std::numbers::pi / 4.0 * in_metres(bore) * in_metres(bore);  // m^2
  return 2.0 * area * area * kPsi / (kGravityReference * kGallonsPerMinute * kGallonsPerMinute);
}

}  // namespace

double widening_coefficient(Length small_bore, Length large_bore) {
  const double lost = 1.0 - share_of_area(small_bore, large_bore);
  return lost * lost;
}

double narrowing_coefficient(Length small_bore, Length large_bore) {
  return 0.5 * (1.0 - share_of_area(small_bore, large_bore));
}

double hooper_coefficient(double k1, double k_infinity, Length bore, double reynolds) {
  assert(reynolds > 0.0 && bore > Length());
  return k1 / reynolds + k_infinity * (1.0 + 1.0 / in_inches(bore));
}

double darby_coefficient(double k1, double ki, double kd, double nominal_inches, double reynolds) {
  assert(reynolds > 0.0 && nominal_inches > 0.0);
  return k1 / reynolds + ki * (1.0 + kd / std::pow(nominal_inches, 0.3));
}

double coefficient_of_valve(double cv, Length bore) {
  assert(cv > 0.0);
  return valve_constant(bore) / (cv * cv);
}

double cv_of_coefficient(double k, Length bore) {
  assert(k > 0.0);
  return std::sqrt(valve_constant(bore) / k);
}

VolumeFlow flow_through_valve(double cv, PressureDifference difference, Density density) {
  assert(difference >= PressureDifference() && density > Density());
  const double specific_gravity = in_kilograms_per_cubic_metre(density) / kGravityReference;
  return us_gallons_per_minute(cv * std::sqrt(in_psi(difference) / specific_gravity));
}

}  // namespace riserun::hydraulics
