// The canvas under the hand: pan, zoom to the pointer, drag, box select.
#pragma once

#include "gui/views/canvas/canvas_state.h"
#include "gui/views/scene/scene.h"

namespace riserun::views {

/// @param free  what of the canvas lies open; the rest is under a pane, and the picture stays where it is
Requests draw_canvas(const Scene& scene, CanvasState& state, const PixelBox& canvas, const PixelBox& free);

}  // namespace riserun::views
