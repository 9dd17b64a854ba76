// Set, reached, relief and test pressure as bars against the walls' limit.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

inline constexpr float kBarsHeight = 80.0F;      // points
inline constexpr float kLeastBarsWide = 330.0F;  // points

/// At ImGui's cursor, so many pixels wide.
void draw_pressure_bars(const Scene& scene, float wide);

}  // namespace riserun::views
