// The table's ports that are not in its floor: where they stand on the canvas, and how a line comes to them from below.
#pragma once

#include "gui/model/canvas/layout.h"

#include <string>
#include <vector>

namespace riserun::gui {

inline constexpr float kUnderTable = 38.0F;  // points between the table and a run whose pipe leads out under it

/// Points over the table's floor at which a port in its side stands, or the pipe of one over its rim.
float height_at_side(const plan::Plan& plan, const Box& table, const std::string& port);

/// Of an inlet over the rim the pipe that is the table's own, from where the line ends over the rim and down to its
/// mouth; empty: it is no such port.
std::vector<Point> pipe_over_rim(const plan::Plan& plan, const Box& table, const std::string& port);

/// Between what stands under the table and its inlet: up, out under the floor past the table's end, and up to it.
/// @param face   the run's end, which looks up
/// @param inlet  the pin in the wall or over the rim, which looks to the right
std::vector<Point> way_outside(const Box& table, const Point& face, const Point& inlet);

}  // namespace riserun::gui
