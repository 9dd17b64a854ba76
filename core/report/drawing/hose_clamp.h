// A hose on its barb: the bands that hold it, and the barb's teeth under it.
#pragma once

#include "quantity/quantities.h"
#include "report/drawing/part_pen.h"

namespace riserun::report {

/// Of a hose that is pushed onto a barb and clamped there.
struct HoseEnd {
  Axis axis;          // from its mouth into the hose
  Length on{};        // how far it is pushed on
  double half = 0.0;  // of the hose's width, metres
  double barb = 0.0;  // of the barb's
};

/// Half the width of a part's body about an axis, metres.
double half_width(const Drawing& part, const Axis& axis);

/// The bands over the hose, each with its screw, and in hidden lines the teeth under it.
void clamp_on(Drawing& drawing, const HoseEnd& end);

}  // namespace riserun::report
