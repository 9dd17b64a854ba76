// The walls: pressures against what they stand, and their bare panels to scale.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

namespace riserun::report {

/// A bar for each pressure of the plan, the walls' limit across them.
/// @param wide  of the scale of pressure, from none to its end; every spot is in the same measure
/// @param high  of each bar with its gap
Drawing pressure_drawing(const plan::Plan& plan, UnitSystem units, double wide, double high);

/// The bare panels side by side, numbered from 1 in the order of the wall check.
Drawing panels_drawing(const plan::Plan& plan);

}  // namespace riserun::report
