// Where the pins stand on the edges of their nodes, once these have their places.
#pragma once

#include "gui/model/canvas/geometry.h"
#include "gui/model/canvas/lanes.h"

#include <vector>

namespace riserun::gui {

/// @param lanes  of the sketch, as the layout has placed them
/// @param nodes  a row for each of Sketch::nodes
/// @return a row for each of Sketch::nodes, with one for each of its pins
std::vector<std::vector<PlacedPin>> pin_places(const Sketch& sketch, const std::vector<Lane>& lanes,
                                               const std::vector<Box>& nodes);

}  // namespace riserun::gui
