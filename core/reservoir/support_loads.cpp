#include "reservoir/support_loads.h"

#include "reservoir/stay_rows.h"

#include <algorithm>
#include <cmath>

namespace riserun::reservoir {

SupportLoads support_loads(const Box& box, const SupportLayout& supports, GaugePressure pressure) {
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const WallBays bays = lid_bays(supports);
  const Length bay_along = longer / static_cast<double>(bays.along);
  const Length bay_across = shorter / static_cast<double>(bays.across);
  const auto on = [&](Length a, Length b) { return newtons(in_pascals(pressure) * in_square_metres(a * b)); };
  // Each row or post carries what lies halfway to its neighbours on both sides, which is one bay.
  const auto weld = [&](Length carried) { return on(carried, metres(1.0)) / metres(1.0); };
  SupportLoads loads;
  loads.lid = on(longer, shorter);
  loads.weld_of_edge = weld(std::min(bay_along, bay_across) / 2.0);
  if (const auto& bare = supports.bare) {
    const Length width = std::min(bare->length, bare->width);
    loads.each_post = on(bare->length, bare->width);
    loads.weld_of_row_along = weld(width);
    loads.weld_of_edge = weld(width / 2.0);
    return loads;
  }
  if (supports.lid_stays_are_posts && bays.along > 1 && bays.across > 1) {
    loads.posts = static_cast<int>(middles_of_stays(longer, {}, supports.baffles_across, bays.along).size() *
                                   middles_of_stays(shorter, {}, supports.baffles_along, bays.across).size());
    if (loads.posts > 0) loads.each_post = on(bay_along, bay_across);
    // Between the posts the baffles are the rows.
    loads.rows_across = supports.baffles_across;
    loads.rows_along = supports.baffles_along;
  } else {
    loads.rows_across = bays.along - 1;
    loads.rows_along = bays.across - 1;
  }
  if (loads.rows_across > 0) {
    loads.each_row_across = on(bay_along, shorter);
    loads.weld_of_row_across = loads.each_row_across / shorter;
  }
  if (loads.rows_along > 0) {
    loads.each_row_along = on(bay_across, longer);
    loads.weld_of_row_along = loads.each_row_along / longer;
  }
  return loads;
}

Stress weld_shear(WeldMetal metal) {
  constexpr double kOfSteel = 0.30 * 60.0e3;      // psi
  constexpr double kOfAluminium = 11.5e3 / 1.95;  // psi
  return stress_pascals((metal == WeldMetal::aluminium ? kOfAluminium : kOfSteel) * kPascalsPerPsi);
}

Length weld_throat(ForcePerLength load, WeldMetal metal) {
  return metres(load.value() / in_pascals(weld_shear(metal)));
}

Length fillet_leg(Length throat, Length thinner_part) {
  const double thickness = in_inches(thinner_part);
  constexpr double kRounding = 1e-6;  // 1/4 in plate is no more than that
  const double least = thickness > 0.75 + kRounding   ? 0.3125
                       : thickness > 0.5 + kRounding  ? 0.25
                       : thickness > 0.25 + kRounding ? 0.1875
                                                      : in_inches(kLeastFillet);
  const double sixteenths = std::ceil(in_inches(throat) / kThroatOfLeg * 16.0 - kRounding);
  return std::max(std::min(inches(least), thinner_part), inches(sixteenths / 16.0));
}

Length weld_length(Force force, Length leg, WeldMetal metal) {
  constexpr double kLegs = 4.0;
  const double carries = in_newtons(force) / (in_pascals(weld_shear(metal)) * kThroatOfLeg * in_metres(leg));
  return std::max(metres(carries), kLegs * leg);
}

}  // namespace riserun::reservoir
