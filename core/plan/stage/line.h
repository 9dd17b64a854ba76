// The water's way from the riser's lower end to the table, as elements of a line.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// @param water the connection from the riser to the table; nullptr: there is none
hydraulics::Line plan_line(const Inputs& inputs, const RiserPlan& riser, const ConnectionPlan* water, Remarks& remarks);

}  // namespace riserun::plan
