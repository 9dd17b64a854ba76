// The transfer: the setting, filling and draining, and why the air supply or the walls do not allow it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/air.h"
#include "plan/stage/inputs.h"
#include "plan/stage/walls.h"

namespace riserun::plan {

TransferPlan plan_transfer(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                           const Levels& levels, const WallLimit& walls, const AirWays& air, Remarks& remarks);

}  // namespace riserun::plan
