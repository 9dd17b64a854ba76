// What the relief valves of a job pass, and what the supply gives with its regulator failed.
#pragma once

#include "plan/judge/open.h"

namespace riserun::plan {

/// Clear bore of a valve that passes kReliefMargin times what one of that bore does: flow goes with the area.
Length with_relief_margin(Length bore);

/// They pass what the supply gives, and a margin over it.
/// @return they pass what the supply gives
bool judge_capacity(const Plan& plan, Open& open);

}  // namespace riserun::plan
