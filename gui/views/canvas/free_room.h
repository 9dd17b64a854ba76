// Where on the canvas nothing stands yet.
#pragma once

#include "gui/model/canvas/layout.h"
#include "gui/views/canvas/canvas.h"

namespace riserun::views {

/// Nothing else is drawn or written there: the table, a part, its words.
bool stands_free(const gui::Layout& layout, const Lens& lens, const PixelBox& room);

}  // namespace riserun::views
