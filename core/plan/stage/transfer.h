// The transfer: the setting, filling and draining, and why the air supply or the walls do not allow it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"
#include "plan/stage/walls.h"

namespace riserun::plan {

/// @param feed_bore narrowest place between receiver and reservoir
TransferPlan plan_transfer(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                           const Levels& levels, const WallLimit& walls, Length feed_bore, Remarks& remarks);

}  // namespace riserun::plan
