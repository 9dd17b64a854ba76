// The canvas as a drawing for paper, from the same layout and the same parts.
#pragma once

#include "gui/views/scene/scene.h"
#include "report/paper/pictures.h"

namespace riserun::views {

/// All of it, with every word, whatever the window has in sight. Needs a plan that is laid out.
report::Picture canvas_picture(const Shown& shown);

}  // namespace riserun::views
