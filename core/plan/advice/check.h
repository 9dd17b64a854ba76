// Advice is checked by following it: a mend is printed only if the job, planned again with it, has the finding no more.
#pragma once

#include "plan/plan.h"

#include <functional>

namespace riserun::plan {

/// Plans a job as far as its findings; see findings_of.
using PlanAgain = std::function<std::vector<Finding>(Job)>;

/// Takes a mend off, and what would have been bought for it, where one of its ways leaves the finding as it is or
/// makes a refusal that was not there. A mend that the job has no words for stays as it is.
void keep_what_mends(Plan& plan, const PlanAgain& plan_again);

}  // namespace riserun::plan
