// Advice is checked by following it: a mend is printed only if the job, planned again with it, has the finding no more.
#pragma once

#include "plan/plan.h"

#include <functional>

namespace riserun::plan {

/// Plans a job as far as its findings; see findings_of.
using PlanAgain = std::function<std::vector<Finding>(Job)>;

/// Keeps of each finding the mends that help: followed, the finding is gone and nothing as grave has come. Where one
/// leads on to the next finding, all that has to be changed together is the mend. What does not help is taken off, with
/// what would have been bought for it; a mend that cannot be tried stays where none that can be helps.
void keep_what_mends(Plan& plan, const PlanAgain& plan_again);

}  // namespace riserun::plan
