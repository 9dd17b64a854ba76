// The line from a part to its words.
#pragma once

#include "gui/model/canvas/placed_run.h"

namespace riserun::gui {

/// Where the line begins: in the middle of what is seen of the part's body, on its axis. What stands in another part,
/// or under a hose, is not seen; of a part that is wholly covered the middle of it.
Point leader_foot(const RunBlock& block, const PlacedNode& node);

/// Where a line from inside the box to a point leaves the box; the point itself where it does not.
Point leaves_box(const Box& box, const Point& from, const Point& to);

/// Whether the two lines cross.
bool cross(const Point& a, const Point& b, const Point& c, const Point& d);

}  // namespace riserun::gui
