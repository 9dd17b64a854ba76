// The ways that air and water take through the connections as they came out: what the physics sees of the fittings.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// The narrowest place between receiver and reservoir: the feed's own, or where a connection that branches is narrower;
/// a restrictor is there for that.
Length feed_bore(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, Remarks& remarks);

}  // namespace riserun::plan
