// What the canvas remembers between frames.
#pragma once

#include "gui/model/canvas/sketch.h"
#include "gui/model/canvas/view_state.h"

#include <map>
#include <optional>
#include <set>
#include <string>

namespace riserun::views {

struct CanvasState {
  std::set<std::string> selected;  // keys of nodes
  gui::Point middle;               // px, from its corner
  gui::Size room;                  // points, of the whole canvas
  bool fit_wanted = true;
  std::optional<gui::Point> box_from;  // box select, on the canvas
  bool panning = false;
  std::string brought;                       // key of the node that was last brought into sight
  std::optional<std::string> pulled_from;    // name of the port from which a new connection is being pulled
  std::string menu_of_port;                  // the port whose menu is open
  std::size_t menu_of_joint = gui::kNoRow;   // row of the sketch's links, likewise
  std::map<std::string, gui::Point> moving;  // how far, under the hand: not yet handed to the model
};

/// The node that alone is selected; nullptr: none or several.
const gui::Node* chosen_node(const gui::Sketch& sketch, const CanvasState& canvas);

}  // namespace riserun::views
