// The ends of a part: threads, barbs, sockets, nuts, cams.
#pragma once

#include "report/drawing/part_arms.h"
#include "report/drawing/part_pen.h"

namespace riserun::report {

/// @param bands  sockets have the reinforcing band of cast fittings round their mouth
void draw_end(PartPen& pen, const Arm& arm, bool bands);

/// What is inside, in hidden lines: the bore, and in a socket what it takes up; and the axis.
void draw_inside(PartPen& pen, const Arm& arm, bool leads_through);

}  // namespace riserun::report
