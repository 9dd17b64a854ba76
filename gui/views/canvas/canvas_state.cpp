#include "gui/views/canvas/canvas_state.h"

namespace riserun::views {

const gui::Node* chosen_node(const gui::Sketch& sketch, const CanvasState& canvas) {
  if (canvas.selected.size() != 1) return nullptr;
  for (const gui::Node& node : sketch.nodes)
    if (node.key == *canvas.selected.begin()) return &node;
  return nullptr;
}

}  // namespace riserun::views
