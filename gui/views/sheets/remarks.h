// What goes with a number: cautions, notes and findings.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

/// Those of one topic that come of what is in the job, each with its source under the pointer.
void draw_remarks(const Scene& scene, plan::Topic topic);
/// What goes with every plan, whatever is in it.
void draw_standing(const Scene& scene);

}  // namespace riserun::views
