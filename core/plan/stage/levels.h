// Levels and volumes: the charge, what the table needs, what the riser leaves behind, what the rim holds.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// @param water the connection from the riser to the table; nullptr: there is none
Levels plan_levels(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                   const ConnectionPlan* water, Remarks& remarks);

}  // namespace riserun::plan
