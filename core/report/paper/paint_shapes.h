// The painter of shapes for pages: the same lists that the window paints.
#pragma once

#include "report/drawing/drawing.h"
#include "report/paper/brush.h"

namespace riserun::report {

/// What dimensions and labels need beside a drawing, in points.
struct Margins {
  double left = 0.0, right = 0.0, over = 0.0, under = 0.0;
};

Margins margins_of(const Drawing& drawing, const Letters& letters);

/// Draws; words of heights go into the margins between the drawing and the sides of `box`. In `placement` a pixel is
/// a point.
void paint_shapes(const Drawing& drawing, const Placement& placement, const PixelBox& box, Brush& brush);

}  // namespace riserun::report
