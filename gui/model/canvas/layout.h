// Where everything stands on the canvas. Flow reads left to right: air supply, reservoir, table, each connection a lane
// between the two things that it joins. A pure function: the same sketch, sizes and moved nodes give the same layout.
#pragma once

#include "gui/model/canvas/geometry.h"
#include "gui/model/canvas/sketch.h"

#include <map>
#include <string>
#include <vector>

namespace riserun::gui {

struct Layout {
  std::vector<Box> nodes;                    // a row for each of Sketch::nodes
  std::vector<std::vector<PlacedPin>> pins;  // ... and each of their pins
  Box all;                                   // what fits in the window when all is shown
};

/// @param sizes  least size of each node, as the view draws it. Vessels are made taller where their pins need it.
/// @param moved  upper left corner of nodes that the user has moved, by key. These stay where they are; all others give
///               way. No two nodes overlap but two that the user has moved so.
Layout lay_out(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved);

}  // namespace riserun::gui
