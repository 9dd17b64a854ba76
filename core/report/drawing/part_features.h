// What tells parts of one outline apart: handles, bonnets, bowls, dials, springs, the arrow of the flow.
#pragma once

#include "catalog/catalog.h"
#include "report/drawing/part_arms.h"
#include "report/drawing/part_pen.h"

namespace riserun::report {

/// On a straight part, between its two ports.
void draw_on_run(PartPen& pen, const catalog::Family& family, const catalog::Part& part, const ArmSet& set);
/// On a part with one port, behind it: dial, spring bonnet, basket, band.
void draw_end_device(PartPen& pen, const catalog::Family& family, const catalog::Part& part, const ArmSet& set);
/// The body and the wheel over it of a valve whose spout looks down.
void draw_bibb(PartPen& pen, const ArmSet& set);
/// The lever of a small ball valve in one arm.
void draw_small_lever(PartPen& pen, const Arm& arm);

}  // namespace riserun::report
