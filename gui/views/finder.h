// Ctrl+K: a line to type into, and under it what it finds.
#pragma once

#include "gui/views/scene/scene.h"

#include <string>

namespace riserun::views {

struct FinderState {
  bool opens = false;
  std::string words;
  int chosen = 0;  // row of what was found
};

Requests draw_finder(const Scene& scene, FinderState& state);

}  // namespace riserun::views
