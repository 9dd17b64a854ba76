// The runs on a canvas, the section under it, and beside that what is chosen.
#pragma once

#include "gui/views/canvas/canvas_state.h"
#include "gui/views/scene/scene.h"

#include <string>

namespace riserun::views {

struct ConnectionsState {
  CanvasState canvas;
  std::string wish;             // being typed, for the chosen connection
  bool something_open = false;  // a menu or a question, in the last frame: Escape was for it
};

Requests draw_connections(const Scene& scene, ConnectionsState& state);

/// The chosen part, and its connection's other chains side by side.
Requests draw_particulars(const Scene& scene, ConnectionsState& state);
/// That row of the alternatives of the chosen part's connection, counted from 0 as they stand there.
Requests take_alternative(const Scene& scene, const CanvasState& canvas, std::size_t row);

}  // namespace riserun::views
