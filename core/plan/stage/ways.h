// The ways that air and water take through the connections.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// One for each end of each connection that goes together.
std::vector<Way> plan_ways(const Inputs& inputs, const std::vector<ConnectionPlan>& connections);

/// The narrowest place between receiver and reservoir: what the job says of the feed, or the narrowest branch that
/// feeds; a restrictor is there for that. The run of a feed that does not branch is not looked at.
Length feed_bore(const Inputs& inputs, const std::vector<Way>& ways, Remarks& remarks);

}  // namespace riserun::plan
