// What goes with a number: cautions, notes and refusals.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

/// Those of one topic, each with its source.
/// @param standing  with those that go with every plan
void draw_remarks(const Scene& scene, plan::Topic topic, bool standing);

}  // namespace riserun::views
