// How the water is let out of the reservoir itself.
#pragma once

#include "plan/plan.h"

namespace riserun::plan {

/// A valve, worked by hand, stands on a port in its floor or in a side; one whose place is not said counts, too.
bool reservoir_can_be_emptied(const Plan& plan);

/// The connection whose plug, in a port in the floor or a side, is all that the water could be let out by; nullptr:
/// there is none, or something else lets it out.
const ConnectionPlan* plugged_drain(const Plan& plan);

}  // namespace riserun::plan
