// What stands behind the badge: each finding with its mend, and what the factor of safety is.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

struct ReasonsState {
  bool opens = false;
  PixelBox under;  // the badge, as last drawn
};

/// A finding with its numbers, its mend and, where the job has keys for it, a button that follows it. `name` tells it
/// apart: "reason 1".
Requests draw_finding(const Scene& scene, const plan::Finding& finding, const std::string& name);

/// The same on so many lines at most, the button beside it: under the pointer all of it.
Requests draw_finding_line(const Scene& scene, const plan::Finding& finding, const std::string& name, int lines);

/// Whether more than one finding has a mend that can be followed.
bool can_mend_several(const plan::Plan& plan);
/// The button that follows them all.
Requests draw_mend_all(const Scene& scene);

Requests draw_reasons(const Scene& scene, ReasonsState& state);

}  // namespace riserun::views
