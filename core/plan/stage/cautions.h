// The cautions that belong to the whole job.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Those that go with every plan, and those of its metals.
void caution_whole_job(const Inputs& inputs, const Plan& plan, Remarks& remarks);

}  // namespace riserun::plan
