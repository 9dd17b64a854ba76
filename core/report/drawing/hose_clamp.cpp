#include "report/drawing/hose_clamp.h"

#include "plan/hose_bands.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace riserun::report {

double half_width(const Drawing& part, const Axis& axis) {
  const double angle = axis.heading * std::numbers::pi / 180.0;
  double half = 0.0;
  for (const Shape& shape : part.shapes)
    if (const auto* area = std::get_if<Area>(&shape); area != nullptr && area->name == "body")
      for (const Spot& spot : area->outline)
        half = std::max(half,
                        std::abs(-(spot.x - axis.from.x) * std::sin(angle) + (spot.y - axis.from.y) * std::cos(angle)));
  return half;
}

void clamp_on(Drawing& drawing, const HoseEnd& end) {
  PartPen pen(drawing);
  constexpr int kTeeth = 4;
  const double on = in_metres(end.on);
  for (const double side : {-1.0, 1.0}) {
    std::vector<std::pair<double, double>> teeth;
    for (int i = 0; i < kTeeth; ++i) {
      teeth.emplace_back(on * i / kTeeth, side * 1.04 * end.barb);
      teeth.emplace_back(on * (i + 0.9) / kTeeth, side * 0.84 * end.barb);
    }
    pen.line(end.axis, "barb", teeth, Line::hidden);
  }
  const double wide = in_metres(plan::kHoseBand);
  const double half = 1.06 * end.half;
  for (const Length& from : plan::bands_on(end.on)) {
    const double at = in_metres(from);
    pen.tube(end.axis, "clamp", at, at + wide, half, half);
    const double high = half + 0.22 * end.half;
    pen.area(end.axis, "clamp screw",
             {{at + 0.2 * wide, half}, {at + 0.8 * wide, half}, {at + 0.8 * wide, high}, {at + 0.2 * wide, high}});
  }
}

}  // namespace riserun::report
