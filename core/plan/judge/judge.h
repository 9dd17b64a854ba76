// The verdict. Last of all it is read from the sections of the plan what is still open: what cannot work or must not be
// done, and what must be there before air goes in and is not in the job. Nothing is worked out here that a stage could
// work out; limits.h holds every limit that decides.
#pragma once

#include "plan/plan.h"
#include "plan/settle/settled.h"

#include <vector>

namespace riserun::plan {

/// @param plan  all of it but its findings
/// @param refused  what the stages have refused already
/// @return what is open, the refused first
std::vector<Finding> judge(const Plan& plan, const Settled& settled, std::vector<Finding> refused);

/// Worst of the findings.
Verdict verdict_of(const std::vector<Finding>& findings);

}  // namespace riserun::plan
