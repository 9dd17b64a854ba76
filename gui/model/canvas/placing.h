// Where vessels and runs stand at a given scale of the parts.
#pragma once

#include "gui/model/canvas/layout.h"

namespace riserun::gui {

/// @param scale  points a metre
Layout placed_at(const LayoutWish& wish, double scale);

/// What each connection joins: the side of the elevation at which its run stands.
enum class Zone {
  air,     // upright between air supply and tank, at the left
  column,  // upright between lid and table
  row,     // level, right of the tank
  shelf,   // level, right of the table
};
struct Standing {
  Zone zone = Zone::column;
  Heading heading = Heading::up;
  bool reaches_table = false;  // and the lid
  bool air = false;            // leads to the air supply
};
Standing standing_of(const plan::Plan& plan, const Sketch& sketch, std::size_t connection);

/// Where the run of a link to its end leaves its last part.
const PlacedPin& face_of(const plan::Plan& plan, const Layout& layout, const Link& link);

/// Fills in the boxes, words and pins of what the blocks hold, and the pipes to the vessels' ports.
void hand_over(const LayoutWish& wish, Layout& layout);

}  // namespace riserun::gui
