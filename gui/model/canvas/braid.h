// The braid of a hose that is drawn longer than its picture.
#pragma once

#include "report/drawing/drawing.h"

#include <vector>

namespace riserun::gui {

/// Strands that cross the place at which a hose is drawn out would be drawn out with it: they are taken away, and those
/// before it go on as far as the hose does.
/// @param from  height on the drawing at which it is drawn out
/// @param sign  which way the hose goes on: 1 up, -1 down
/// @param by    how far
/// @return the strands for what is put in, to be added once what lies beyond has been moved
std::vector<report::Shape> with_longer_braid(report::Drawing& art, double from, double sign, double by);

}  // namespace riserun::gui
