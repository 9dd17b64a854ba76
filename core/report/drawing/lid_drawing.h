// The reservoir's lid from above, to scale: its bungs with their axes, and what is welded to its inside.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

namespace riserun::report {

/// Bungs that have a place are numbered from 1 in the order of the plan's lid map, the room that a wrench needs round
/// each dashed. Spots are metres from the inside of the left end and of the front side, which lies below.
Drawing lid_drawing(const plan::Plan& plan, UnitSystem units);

/// A bung of the lid has a place: there is something to draw.
bool has_lid_drawing(const plan::Plan& plan);

}  // namespace riserun::report
