#include "hydraulics/friction.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

constexpr double kTwoOverLn10 = 2.0 / std::numbers::ln10;

double bounded(double relative_roughness) {
  assert(relative_roughness >= 0.0);
  return std::min(relative_roughness, kGreatestRelativeRoughness);
}

/// Solves g(x) = x + 2 log10(a + b x) = 0 for x = 1/sqrt(f), with a = e/3.7 and b = 2.51/Re, by Halley's method. g
/// rises and is concave and nearly straight.
double solve_inverse_root(double a, double b, double x) {
  constexpr int kMostSteps = 30;  // two or three are usual
  for (int step = 0; step < kMostSteps; ++step) {
    const double argument = a + b * x;
    const double value = x + kTwoOverLn10 * std::log(argument);
    const double bend = kTwoOverLn10 * b / argument;  // g' = 1 + bend, g'' = -bend^2 ln(10)/2
    const double newton = value / (1.0 + bend);
    const double change = newton / (1.0 + 0.5 * newton * bend * bend / (kTwoOverLn10 * (1.0 + bend)));
    x -= change;
    if (!(x > 0.0)) x = 1.0e-3;  // a step from a start far to the right
    // Cubic convergence: a relative change of 1e-5 leaves an error near 1e-15.
    if (std::abs(change) <= 1.0e-5 * x) break;
  }
  return x;
}

/// One fixed-point step from f near 0.04 gives a start within some percent of the solution.
double first_inverse_root(double a, double b) { return -kTwoOverLn10 * std::log(a + 5.0 * b); }

}  // namespace

double colebrook_friction_factor(double reynolds, double relative_roughness) {
  assert(reynolds > 0.0);
  const double a = bounded(relative_roughness) / 3.7;
  const double b = 2.51 / reynolds;
  const double x = solve_inverse_root(a, b, std::max(first_inverse_root(a, b), 0.1));
  return 1.0 / (x * x);
}

double darcy_friction_factor(double reynolds, double relative_roughness) {
  assert(reynolds > 0.0);
  return FrictionFactor(relative_roughness).at(reynolds).factor;
}

double crane_turbulent_friction_factor(Length bore) {
  constexpr double kCommercialSteelInches = 0.0018;  // Crane TP-410: 0.00015 ft
  assert(bore > Length());
  const double logarithm = std::log10(bounded(kCommercialSteelInches / in_inches(bore)) / 3.7);
  return 0.25 / (logarithm * logarithm);
}

FrictionFactor::FrictionFactor(double relative_roughness, double turbulent_scale)
    : roughness_term_(bounded(relative_roughness) / 3.7), scale_(turbulent_scale) {
  inverse_root_ = std::max(first_inverse_root(roughness_term_, 2.51 / kTurbulentReynolds), 0.1);
  const Value join = turbulent(kTurbulentReynolds);
  join_log_factor_ = std::log(join.factor);
  join_slope_ = join.slope;
}

FrictionFactor::Value FrictionFactor::turbulent(double reynolds) {
  const double b = 2.51 / reynolds;
  inverse_root_ = solve_inverse_root(roughness_term_, b, inverse_root_);
  const double x = inverse_root_;
  // From the derivative of Colebrook-White: dx/dlnRe = s x / (1 + s), s = (2/ln 10) b / (a + b x).
  const double s = kTwoOverLn10 * b / (roughness_term_ + b * x);
  return {scale_ / (x * x), -2.0 * s / (1.0 + s)};
}

FrictionFactor::Value FrictionFactor::at(double reynolds) {
  if (reynolds <= kLaminarReynolds) return {64.0 / reynolds, -1.0};
  if (reynolds >= kTurbulentReynolds) return turbulent(reynolds);
  // Cubic Hermite in t from (2000, slope -1) to (4000, join_slope_).
  const double width = std::log(kTurbulentReynolds / kLaminarReynolds);
  const double t = std::log(reynolds / kLaminarReynolds) / width;
  const double low = std::log(64.0 / kLaminarReynolds);
  const double rise = join_log_factor_ - low;
  const double low_slope = -width;
  const double high_slope = join_slope_ * width;
  const double c = 3.0 * rise - 2.0 * low_slope - high_slope;
  const double d = low_slope + high_slope - 2.0 * rise;
  const double log_factor = low + t * (low_slope + t * (c + t * d));
  const double slope = (low_slope + t * (2.0 * c + 3.0 * d * t)) / width;
  return {std::exp(log_factor), slope};
}

}  // namespace riserun::hydraulics
