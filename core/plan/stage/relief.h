// Relief: where the valve must open, what it must pass, what a failed regulator does; and the job's own relief valves.
#pragma once

#include "plan/plan.h"
#include "plan/stage/air.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

ReliefPlan plan_relief(const Inputs& inputs, const std::vector<Way>& ways, const AirWays& air, const WallsPlan& walls,
                       const TransferPlan& transfer, Remarks& remarks);

}  // namespace riserun::plan
