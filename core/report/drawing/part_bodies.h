// The middles of parts: hexagons, bonnets and hand wheels, balls, bowls, dials.
#pragma once

#include "catalog/catalog.h"
#include "report/drawing/part_arms.h"
#include "report/drawing/part_pen.h"

namespace riserun::report {

/// What stands behind the ends: the body between them.
void draw_body(PartPen& pen, const catalog::Family& family, const catalog::Part& part, const ArmSet& set);
/// What stands before them: nuts, handles, bonnets, the arrow.
void draw_features(PartPen& pen, const catalog::Family& family, const catalog::Part& part, const ArmSet& set);

}  // namespace riserun::report
