// The canvas under its lens: what lies under the pointer, and all of it painted. Nothing here is changed.
#pragma once

#include "gui/views/canvas/canvas.h"
#include "gui/views/canvas/canvas_state.h"
#include "gui/views/scene/scene.h"

#include <cstddef>

namespace riserun::views {

struct Sight {
  const Scene& scene;
  Lens lens;
  PixelBox box;  // of the canvas on the screen
};

/// What lies under the pointer: a vessel's port, or a node, or nothing; and a joint, which lies between two.
struct Pointed {
  gui::Point at;                   // px
  const gui::Pin* port = nullptr;  // nullptr: none
  std::size_t node = gui::kNoRow;  // row of the sketch; kNoRow: none
  std::size_t link = gui::kNoRow;  // of the joint of two parts; kNoRow: none, or the parts are drawn too small
};
Pointed pointed_at(const Sight& sight, const gui::Point& pointer);

/// From where a box was begun to the pointer, on the canvas.
gui::Box box_between(const gui::Point& from, const gui::Point& to);

/// Nodes and pipes that are in sight, the box that is drawn up, the connection that is pulled.
void paint_canvas(const Sight& sight, const CanvasState& state, const Pointed& pointed);

/// Words beside the resting pointer: what the catalog says of the part, where a pulled connection would lead.
void tell(const Sight& sight, const CanvasState& state, const Pointed& pointed);

}  // namespace riserun::views
