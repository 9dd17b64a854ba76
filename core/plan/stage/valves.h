// Which side of the valve a connection opens on.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Turns the run round where that costs nothing and leaves the valve with the reservoir when the union is opened; else
/// says what it would cost (common practice).
void leave_valve_with_reservoir(const Inputs& inputs, const chain::Finder& finder, ConnectionPlan& plan);

}  // namespace riserun::plan
