// What is worth a warning about a fill and a drain that work.
#pragma once

#include "plan/plan.h"

namespace riserun::plan {

/// Fast water, a wished time that is missed, and water that stays in the table.
void caution_time_and_rest(const Wishes& wishes, const Levels& levels, const TransferPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
