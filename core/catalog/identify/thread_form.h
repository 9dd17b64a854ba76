// The diameters of a thread as a tape, rule or caliper meets them, worked out from the catalog's sizes and the form of
// the thread in its standard. A taper thread measures differently along its length, so each is a band.
#pragma once

#include "catalog/joint.h"

#include <optional>

namespace riserun::catalog {

struct LengthBand {
  Length low{};
  Length high{};
};

struct ThreadDiameters {
  LengthBand over_male_crests;
  LengthBand between_female_crests;
  Length male_pitch_diameter{};    // where the male begins: at the small end of a taper
  Length female_pitch_diameter{};  // at the mouth
};

/// The diameters of that size, with what the standard's tolerances leave.
///
/// 60 degree taper (p: pitch, D: outside diameter of the pipe, L1: hand-tight length; all in the same unit):
///     E0 = D - (0.05 D + 1.1) p,  E1 = E0 + L1/16,  thread height 0.8 p
///     male crests from E0 + 0.8 p at the small end to D; female crests E1 - 0.8 p at the mouth, less L1/16 within
/// Source: ASME B1.20.1, 2.4, 3.1.5 and 3.1.6 (formulas and height); plus or minus one turn, p/16: 3.2; crests cut
/// lower by up to 0.045 p a side more than the least: Table 1 (from memory).
///
/// 55 degree taper (D: major diameter at the gauge plane, L1 from the small end; L2: useful thread; height 0.640327 p):
///     male crests D - L1/16 to D + (L2 - L1)/16; female crests D - 1.280654 p at the mouth, less L1/16 within
/// Source: ISO 7-1 (form and height from memory); plus or minus one turn (from memory).
///
/// Straight: male crests from D down by 0.087 p^(2/3) (p and result in inches), the form of the major diameter's
/// tolerance in ASME B1.1 (0.060 for class 2, from memory), wide enough for the 0.017 in of ASME B1.20.7 and for
/// ISO 228-1 (from memory). Pitch diameter D - 0.6495 p (60 degrees: ASME B1.1) or D - 0.640327 p (55: ISO 228-1).
/// Female crests of 60 degrees D - 1.2 p to D - 0.85 p: basic D - 1.0825 p and up, ASME B1.1 (from memory); the hose
/// thread's 0.9595 to 0.9765 in of ASME B1.20.7 lies within. Of 55 degrees D - 1.280654 p to D - 0.98 p: ISO 228-1
/// (from memory).
///
/// @return nullopt for a kind without a thread or without a flank angle
std::optional<ThreadDiameters> thread_diameters(const JointKind& kind, const JointSize& size);

}  // namespace riserun::catalog
