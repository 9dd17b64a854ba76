// The plan's numbers in groups, each with where it comes from; under each group what must be watched.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

/// Asks for nothing.
void draw_numbers(const Scene& scene);

}  // namespace riserun::views
