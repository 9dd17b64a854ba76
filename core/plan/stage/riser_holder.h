// What holds a riser that is smaller than its bung: fittings screwed into the bung from inside.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Puts a holder between bung and riser and moves the riser down by it, where the bung is threaded from both ends, is
/// of another size than the riser and the inside can still be reached; a riser that only a bushing tapped from both
/// sides would hold is left as it is, for the verdict.
/// @pre the riser's pipe and bung have been settled
void hold_riser(const Inputs& inputs, const JobPort& bung, PortTypeId riser_thread, RiserPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
