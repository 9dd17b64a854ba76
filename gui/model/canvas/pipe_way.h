// The way of a pipe between two pins.
#pragma once

#include "gui/model/canvas/geometry.h"

#include <vector>

namespace riserun::gui {

/// In straight pieces with square corners: out of a, across, into b.
/// @param lane  pipes that leave side by side turn at different places
std::vector<Point> pipe_way(const PlacedPin& a, const PlacedPin& b, int lane);

}  // namespace riserun::gui
