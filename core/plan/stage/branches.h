// A connection's several far ends: what is asked of the search for a branched assembly, and what comes of it.
#pragma once

#include "chain/ask/allocation.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Fills what is asked, and says what of the bin it may want.
/// @pre the job gives the connection branches
chain::Demand ask_branches(const Inputs& inputs, const JobConnection& connection, ConnectionPlan& plan,
                           Remarks& remarks);

/// Says what comes of the answer.
void settle_branches(const Inputs& inputs, ConnectionPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
