// Bending of a flat rectangular plate under uniform pressure, by series solution of the plate equation: for edges that
// are held (no turning) and for edges that are free to turn. The two bound what a welded panel does.
#pragma once

namespace riserun::reservoir {

/// Deflection and bending coefficients of a rectangular plate under uniform pressure, by series (not from a table).
///
///     w = alpha q a^4 / D,   M = beta q a^2 per unit width,   a = short side, D = E t^3 / (12 (1 - nu^2))
struct PlateCoefficients {
  double alpha_centre = 0.0;
  double beta_short_span_centre = 0.0;  // bending across the short side, in the middle
  double beta_long_span_centre = 0.0;
  double beta_long_edge = 0.0;     // at the middle of the long edge (held edges; otherwise 0), as a magnitude
  double beta_short_edge = 0.0;    // at the middle of the short edge (held edges; otherwise 0), as a magnitude
  double beta_corner_twist = 0.0;  // twisting moment in the corner (free edges; otherwise 0): a principal moment

  /// The moment that governs the stress: the greatest of the above.
  double beta_greatest() const;
};

/// All four edges held: the edges-free series plus edge moments that turn every edge back to level (Timoshenko and
/// Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., article 44). The edge moments are sine series whose
/// coefficients solve a linear system; they are good to 1e-5 (see plate_judge.py). beta_long_edge is that of the
/// middle; on a plate longer than 3 to 1 the moment some way off the middle is up to 0.4 % greater.
/// @param long_over_short >= 1; above 8 the values are those of a strip with held ends, to the last digit
/// @param poisson_ratio 0 to 0.5
PlateCoefficients held_plate(double long_over_short, double poisson_ratio);

/// All four edges supported but free to turn, corners held down: Levy's series (the same book, article 30), with the
/// strip's part summed in closed form so that what is left falls off exponentially. Exact to rounding.
/// @param long_over_short >= 1
/// @param poisson_ratio 0 to 0.5
PlateCoefficients free_plate(double long_over_short, double poisson_ratio);

}  // namespace riserun::reservoir
