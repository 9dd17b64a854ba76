// The lid as it is marked out: bungs, their holes, and what is welded to its inside.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Places that the job leaves out are proposed; one of a bung that is welded in already stays unknown.
LidMap plan_lid_map(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, const RiserPlan& riser,
                    Remarks& remarks);

}  // namespace riserun::plan
