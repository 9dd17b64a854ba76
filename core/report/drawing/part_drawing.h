// A part cut open, drawn from its ports: bores, threads and barbs in scale to each other, male and female told apart by
// their shape. Long parts are broken in the middle, as a fitter's sketch breaks them.
#pragma once

#include "catalog/catalog.h"
#include "report/drawing/drawing.h"

namespace riserun::report {

/// @param enter,leave  ports that the run goes through: the first is drawn to the left, the second to the right where
///                     the part is straight
Drawing part_drawing(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);

}  // namespace riserun::report
