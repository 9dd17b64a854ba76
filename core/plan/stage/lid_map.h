// The lid as it is marked out: bungs, their holes, and what is welded to its inside.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// Where those baffles are marked out on the floor: in middles, from the left end or from the front.
Fact places_of_baffles(const std::vector<Length>& middles, bool from_left);

/// Places that the job leaves out are proposed; one of a bung that is welded in already stays unknown.
LidMap plan_lid_map(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, const RiserPlan& riser,
                    Remarks& remarks);

}  // namespace riserun::plan
