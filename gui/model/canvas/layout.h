// Where everything stands on the canvas. Flow reads left to right: air supply, reservoir, table, each connection a lane
// between the two things that it joins. A pure function: the same sketch, sizes and moved nodes give the same layout.
#pragma once

#include "gui/model/canvas/sketch.h"
#include "gui/model/canvas/view_state.h"

#include <map>
#include <string>
#include <vector>

namespace riserun::gui {

struct Size {
  float width = 0.0F;
  float height = 0.0F;
};

struct Box {
  Point corner;  // upper left
  Size size;
  float right() const { return corner.x + size.width; }
  float bottom() const { return corner.y + size.height; }
};

bool overlap(const Box& a, const Box& b);

/// A cubic Bezier curve.
struct Curve {
  Point from, from_handle, to_handle, to;
};

struct PlacedPin {
  Point where;      // on the edge of its node
  Point direction;  // unit vector out of the node
};

struct Layout {
  std::vector<Box> nodes;                    // a row for each of Sketch::nodes
  std::vector<std::vector<PlacedPin>> pins;  // ... and each of their pins
  std::vector<Curve> links;                  // a row for each of Sketch::links
  Box all;                                   // what fits in the window when all is shown
};

inline constexpr float kNodeGap = 28.0F;  // at least that much between two nodes that the user has not moved
inline constexpr float kLaneGap = 36.0F;
inline constexpr float kPinPitch = 22.0F;  // between two pins on one edge of a vessel

/// @param sizes  least size of each node, as the view draws it. Vessels are made taller where their pins need it.
/// @param moved  upper left corner of nodes that the user has moved, by key. These stay where they are; all others give
///               way. No two nodes overlap but two that the user has moved so.
Layout lay_out(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved);

}  // namespace riserun::gui
