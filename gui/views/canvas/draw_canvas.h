// The canvas under the hand: pan, zoom to the pointer, drag, box select.
#pragma once

#include "gui/views/canvas/canvas_state.h"
#include "gui/views/scene/scene.h"

namespace riserun::views {

Requests draw_canvas(const Scene& scene, CanvasState& state, const PixelBox& box);

}  // namespace riserun::views
