// The section, the clock under it, and the curves.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

Requests draw_water(const Scene& scene);

void draw_section(const Scene& scene, const PixelBox& box);
Requests draw_clock(const Scene& scene);

}  // namespace riserun::views
