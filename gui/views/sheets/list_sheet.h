// What to buy, what to take from the bin, what to cut, then the order of work and the leak test: with boxes to tick in
// the store and at the bench.
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
