// A plot of the timeline as a drawing: axes, bands of the range, curves, what happens when.
#pragma once

#include "report/drawing/drawing.h"
#include "report/drawing/plot_series.h"
#include "report/drawing/timeline.h"

namespace riserun::report {

/// The colour of a plot's series.
Ink ink_of(const Plot& plot, std::size_t row);

/// A step of a time axis: whole minutes where it is longer than two. Seconds.
double time_step(double whole, int wanted);

/// @param wide,high  of the area that the curves have, in points, as every spot of the drawing
Drawing plot_drawing(const Plot& plot, const Timeline& timeline, double wide, double high);

}  // namespace riserun::report
