// Many runs: each a picture with its parts' names under it, in columns beside the elevation.
#pragma once

#include "gui/model/canvas/layout.h"

namespace riserun::gui {

/// Moves each run into the columns, in the plan's order from the top down; as many of them as show all of it largest.
/// @param room  that should do for the elevation and the columns
void wrap_rows(const Size& room, Layout& layout);

}  // namespace riserun::gui
