// Shapes onto the screen. What is drawn is made in report/drawing, which the pages draw from too.
#pragma once

#include "gui/views/drawing/theme.h"
#include "report/drawing/drawing.h"

struct ImDrawList;

namespace riserun::views {

using report::Drawing;
using report::fitted;
using report::PixelBox;
using report::Placement;
using report::Side;
using report::Spot;

/// What the dimensions of one side need beside the drawing: their columns and their longest words, in the font that is
/// in use. Pixels.
float margin_for(const Drawing& drawing, Side side, float pixel);

/// Draws; words of dimensions go into the margins between the drawing and the sides of `box`.
void paint(const Drawing& drawing, const Placement& placement, const PixelBox& box, const Theme& theme,
           ImDrawList& list);

}  // namespace riserun::views
