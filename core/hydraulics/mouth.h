// The mouth of a pipe in a vessel: what falls over its rim when the water is shallow, how deep water must stand over it
// before no air is drawn in, how high a jet leaves it, and the film that no mouth takes.
#pragma once

#include "quantity/quantities.h"

namespace riserun::hydraulics {

/// Coefficients of a rim as a weir, m^0.5/s.
///
/// Critical depth over a broad crest, (2/3)^1.5 sqrt(g): 1.7046, which is the most that can pass without losses;
/// a broad crest in use, 0.35 sqrt(2 g): 1.55; a sharp crest far over the bottom, 3.27 ft^0.5/s: 1.805 (stormwater
/// manuals). Broad-crested weirs are measured down to 60 mm: below it, where all of a table's last inch lies, the first
/// is a bound and no measurement.
inline constexpr double kBroadCrest = 1.7046;
inline constexpr double kBroadCrestInUse = 1.55;
inline constexpr double kSharpCrest = 1.805;

/// Q = C pi D h^1.5: all round a flush mouth, from a depth over it.
/// Source: M. G. Bos, Discharge measurement structures, ILRI publication 20, 1989.
VolumeFlow flow_over_rim(Length bore, Length depth, double coefficient = kBroadCrest);

/// Time in which the rim alone lowers a vessel of that area from one depth to a lower one: 2 A / (C pi D) (h2^-0.5 -
/// h1^-0.5).
/// @pre 0 < lower <= upper
Time time_over_rim(Area area, Length bore, Length upper, Length lower, double coefficient = kBroadCrest);

/// Depth over a mouth, in quiet water, at which the dip of the surface reaches it: 0.69 (Q^2 / g)^0.2. The least depth
/// that is needed; swirl asks for more.
/// Source: B. T. Lubin and G. S. Springer, J. Fluid Mech. 29, 1967 (from memory).
Length dip_depth(VolumeFlow flow);

/// Submergence of the intakes of full-size pumps, against air-drawing vortices: D (1 + 2.3 v / sqrt(g D)). Written for
/// mouths far larger than a riser's.
/// Source: ANSI/HI 9.8, minimum submergence.
Length intake_submergence(Length bore, VolumeFlow flow);

/// Height of an upright jet over its mouth: v^2 / 2g of the mean velocity, and up to kJetMost times that, as the
/// middle of the stream is faster (table of the discharge of upright pipes, k 0.87).
Length jet_height(Velocity velocity);
inline constexpr double kJetMost = 1.32;

/// Film that stays on a level floor: 2 l sin(angle / 2), l = sqrt(sigma / (rho g)).
/// @param contact_angle_degrees 20 for steel that is well wetted, 90 for an oily or painted one
/// Source: P.-G. de Gennes, F. Brochard-Wyart, D. Quere, Capillarity and Wetting Phenomena (from memory).
Length film_left(double contact_angle_degrees, Density water);

}  // namespace riserun::hydraulics
