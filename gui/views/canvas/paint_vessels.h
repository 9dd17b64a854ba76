// Tank, table and air supply, as the canvas draws them.
#pragma once

#include "gui/views/canvas/canvas.h"
#include "gui/views/scene/scene.h"

namespace riserun::views {

/// With its water as the clock has it, its ports and their names.
void paint_vessel(const Scene& scene, const Lens& lens, std::size_t node, bool selected);

}  // namespace riserun::views
