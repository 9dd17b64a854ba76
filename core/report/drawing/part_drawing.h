// A part seen from the side, drawn from its ports, its role and the shapes that the catalog names: bores, threads and
// bodies in scale to each other, what is inside in hidden lines (ISO 128-3), threads as a fitter sees them. Long parts
// are broken in the middle, as a fitter's sketch breaks them.
#pragma once

#include "catalog/catalog.h"
#include "report/drawing/drawing.h"

#include <vector>

namespace riserun::report {

/// Where a port ends on the drawing.
struct PortSpot {
  Spot at;
  double heading = 0.0;  // degrees, anticlockwise from the right
};

struct PartPicture {
  Drawing drawing;
  std::vector<PortSpot> ports;  // of each port of the part
  bool broken = false;          // it is longer than it is drawn
};

/// @param enter,leave  ports that the run goes through: the first is drawn to the left, the second to the right where
///                     the part is straight
PartPicture part_picture(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t enter,
                         std::size_t leave);

/// The shapes alone.
Drawing part_drawing(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);

}  // namespace riserun::report
