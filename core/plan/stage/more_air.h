// What a supply that gives out would have to be.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Names the smallest receiver and the smallest compressor that are sold with which the fill, worked out again, comes
/// up in the wished time, or in five minutes; the finding stays without a mend where none does.
void offer_more_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, Finding& finding);

}  // namespace riserun::plan
