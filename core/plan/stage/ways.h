// The ways that air and water take through the connections.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// One for each end of each connection that goes together.
std::vector<Way> plan_ways(const Inputs& inputs, const std::vector<ConnectionPlan>& connections);

}  // namespace riserun::plan
