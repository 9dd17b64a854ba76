// What to buy, what to take from the bin, what to cut: with boxes to tick in the store.
#pragma once

#include "gui/views/scene/scene.h"

#include <set>
#include <string>

namespace riserun::views {

struct ListState {
  std::set<std::string> ticked;  // rows
};

Requests draw_list(const Scene& scene, ListState& state);

}  // namespace riserun::views
