// Wall friction of a full round pipe: the Darcy factor f in head = f (L/D) V^2 / (2 g), and Crane's factor fT.
#pragma once

#include "quantity/quantities.h"

namespace riserun::hydraulics {

/// Below this Reynolds number the flow is laminar, from kTurbulentReynolds up it is turbulent (Moody 1944: the critical
/// zone lies between about 2000 and 4000).
inline constexpr double kLaminarReynolds = 2000.0;
inline constexpr double kTurbulentReynolds = 4000.0;

/// The Moody chart ends at a relative roughness of 0.05; beyond it Colebrook-White is an extrapolation. Above
/// kGreatestRelativeRoughness a wall is no longer a wall, and the value there stands for all above.
inline constexpr double kMoodyRelativeRoughness = 0.05;
inline constexpr double kGreatestRelativeRoughness = 0.5;

/// Turbulent Darcy factor by Colebrook-White, solved by Halley's method to the last bits.
///
///     1/sqrt(f) = -2 log10( e/3.7 + 2.51 / (Re sqrt(f)) )
///
/// @param reynolds            Re on the inside diameter [-], kTurbulentReynolds and above
/// @param relative_roughness  e = wall roughness / inside diameter [-], 0 to kMoodyRelativeRoughness
/// Source: C. F. Colebrook, "Turbulent flow in pipes", J. Inst. Civil Engineers 11, 1939, pp. 133-156.
double colebrook_friction_factor(double reynolds, double relative_roughness);

/// Darcy factor over the whole range: 64/Re (Hagen-Poiseuille) up to kLaminarReynolds, Colebrook-White from
/// kTurbulentReynolds, and between them the cubic in (ln Re, ln f) that meets both branches in value and slope.
///
/// Why that join: measured factors there depend on the inlet, so no formula is right; what counts is that f and its
/// slope are continuous and that the head (f Re^2) rises with the flow. It does: the laminar slope of ln f is -1, the
/// turbulent one is -0.3 (smooth) to 0, and the turbulent end lies higher than the laminar one; so the slope of the
/// cubic is a parabola open downward and is least at an end, while the head would fall only below -2.
///
/// @param reynolds > 0
double darcy_friction_factor(double reynolds, double relative_roughness);

/// Crane's friction factor in the zone of complete turbulence for clean commercial steel pipe of that bore, on which
/// the K = n fT of fittings stands.
///
///     fT = 0.25 / log10( (0.0018 in / D) / 3.7 )^2
///
/// Source: Crane TP-410 (2009), Appendix A; rounds to its printed column.
double crane_turbulent_friction_factor(Length bore);

/// The friction of one relative roughness, prepared for repeated calls close to each other: it starts each solution of
/// Colebrook-White from the one before. Not for use from two threads at once.
class FrictionFactor {
 public:
  /// @param relative_roughness >= 0; above kGreatestRelativeRoughness it counts as that
  /// @param turbulent_scale    factor on the turbulent branch, for the ends of its range; 0.85 to 1.15
  explicit FrictionFactor(double relative_roughness, double turbulent_scale = 1.0);

  struct Value {
    double factor;  // f
    double slope;   // d ln f / d ln Re
  };
  /// @param reynolds > 0
  Value at(double reynolds);

 private:
  Value turbulent(double reynolds);

  double roughness_term_;  // e / 3.7
  double scale_;
  double inverse_root_ = 5.0;     // 1/sqrt(f) of the last solution
  double join_log_factor_ = 0.0;  // ln f at kTurbulentReynolds
  double join_slope_ = 0.0;       // d ln f / d ln Re there
};

}  // namespace riserun::hydraulics
