// What the regulator's knob may stand over the setting that is asked of it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/air.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Takes it off the setting up to which the relief valves stay shut: its gauge off, and the regulator back higher than
/// it was, where the water is lifted still; else the gauge alone, as a regulator that comes back so coarsely has a
/// finding of its own.
void leave_room_for_the_knob(const Inputs& inputs, const AirWays& air, TransferPlan& plan);

/// The same of the setting that was chosen.
void find_knob_off(const Inputs& inputs, const AirWays& air, TransferPlan& plan);

}  // namespace riserun::plan
