// The order of work of the whole job, with each run's own build order in it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Bungs and riser before the lid, the leak test before anything is built on, relief valve and gauge before the rest,
/// the air last (common practice). What a refused plan has no use for is left out.
/// @param plan all but its order of work
WorkPlan plan_work(const Inputs& inputs, const Plan& plan);

}  // namespace riserun::plan
