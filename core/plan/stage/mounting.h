// Which way up the parts of a connection stand, as far as the job says how its ports look. A swing check closes by the
// weight of its flap: flat, or upright with the flow upward, never with the flow downward (articles on its mounting,
// published).
#pragma once

#include "plan/plan.h"
#include "plan/remarks.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Keeps swing checks out of a run from one port to another where water or air leaves downward or comes in from above,
/// if what is needed is made with a spring too. A run that the job has chosen stays as it is.
/// @param plan with its request and the names of its ports
void keep_swing_checks_from_falling_flow(const Inputs& inputs, ConnectionPlan& plan);

/// Refuses a swing check in a straight upright run through which the flow comes down.
void judge_mounting(const Inputs& inputs, const ConnectionPlan& plan, Remarks& remarks);

/// What stands at the end of a way can be turned upright as the way is screwed together: every fitting turns about the
/// axis that it is screwed in on, so a quarter turn out of the lid lies flat, and one more may stand up again. A bung
/// of the reservoir whose place is not said is taken to be in the lid; of other ports it is not known, and so it can.
bool can_end_upright(const Inputs& inputs, const std::string& base, const chain::Chain& way);

}  // namespace riserun::plan
