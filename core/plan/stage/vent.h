// The vent: what it adds to the time in which the table drains, and the valve that would do.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>

namespace riserun::plan {

/// nullopt: the table does not drain, or by a siphon, whose time the vent does not decide.
std::optional<VentPlan> plan_vent(const Inputs& inputs, const RiserPlan& riser, const TransferPlan& transfer);

}  // namespace riserun::plan
