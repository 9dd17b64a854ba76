// The cautions that belong to the whole job.
#pragma once

#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Those that go with every plan, and those of its metals.
void caution_whole_job(const Inputs& inputs, Remarks& remarks);

}  // namespace riserun::plan
