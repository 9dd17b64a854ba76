// What the supports of the lid and their welds carry, and the weld that they take.
#pragma once

#include "quantity/quantities.h"
#include "reservoir/box_panels.h"
#include "reservoir/metals.h"

#include <boost/units/operators.hpp>

namespace riserun::reservoir {

using ForcePerLength = boost::units::quantity<boost::units::divide_typeof_helper<si::force, si::length>::type>;  // N/m

/// What the supports of the lid carry at a pressure: pressure times the area that leans on each. Where
/// rows cross, each is taken as if it carried its strip alone, which is on the safe side.
struct SupportLoads {
  Force lid{};              // the whole lid; its outer weld carries what the supports do not
  Force each_row_across{};  // a row of stays or a baffle across the length; zero: none
  Force each_row_along{};
  Force
      each_post{};  // a single stay where two rows would cross, or at the corners of the widest bare panel; zero: none
  int rows_across = 0;  // where stays are posts, the baffles alone
  int rows_along = 0;
  int posts = 0;                        // beside the baffles: none stands where a baffle does
  ForcePerLength weld_of_row_across{};  // along the row's weld to the lid
  ForcePerLength weld_of_row_along{};   // of the widest bare panel: of a bar along its longer side
  ForcePerLength weld_of_edge{};        // the seam round the lid, at the middle of a panel's longer side

  /// Of the row that carries most.
  ForcePerLength weld_of_row() const {
    return weld_of_row_across > weld_of_row_along ? weld_of_row_across : weld_of_row_along;
  }
};

/// A panel's load goes to its nearest edge (yield-line theory's lines at 45 degrees, from memory): half of the shorter
/// side's load comes on each unit of length at the middle of the longer.
SupportLoads support_loads(const Box& box, const SupportLayout& supports, GaugePressure pressure);

/// Shear that a fillet weld may carry on its throat. Steel and stainless steel: 0.30 of the strength of the weakest
/// electrode in use, 60 ksi (AWS D1.1, AISC allowable stress design; from memory). Aluminium: 4043, the weaker of the
/// usual fillers, breaks in shear at 11.5 ksi, over a factor of 1.95 (Aluminum Design Manual, allowable strength
/// design; from memory).
Stress weld_shear(WeldMetal metal);
/// Throat of a fillet over its leg: 45 degrees.
inline constexpr double kThroatOfLeg = 0.7071;
/// Least leg of a fillet on sheet to 1/4 in: AWS D1.1:2025 Table 7.7.
inline const Length kLeastFillet = inches(0.125);

/// Least throat of a weld that runs along the whole of what it holds; where there is one on both sides, of both
/// together. The sheet's own shear beside it is not looked at.
Length weld_throat(ForcePerLength load, WeldMetal metal);

/// Leg of the fillet to be welded for that throat, made on one side alone, next mark of a sixteenth up: no less than
/// AWS D1.1:2025 Table 7.7 has for the thinner part (1/8 in to 1/4 in, 3/16 in to 1/2 in, 1/4 in to 3/4 in, 5/16 in
/// above), which no welder goes under; along the edge of thinner sheet the sheet's thickness is all there is (AISC
/// J2.2b).
Length fillet_leg(Length throat, Length thinner_part);

/// Length of fillet of that leg that carries the force, all runs together; no less than four legs, under which a fillet
/// does not count whole (AISC J2.2b).
Length weld_length(Force force, Length leg, WeldMetal metal);

inline double in_pounds_per_inch(ForcePerLength v) {
  return v.value() * kMetresPerInch / (kKilogramsPerPound * kStandardGravity);
}

}  // namespace riserun::reservoir
