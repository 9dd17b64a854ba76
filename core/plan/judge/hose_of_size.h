// The hose that a run is advised to have in it.
#pragma once

#include "plan/plan.h"

#include <optional>

namespace riserun::plan {

/// Hose by the foot of the bung's size, of the sort that most counters cut: the cheapest that vacuum does not flatten
/// where the run asks for that; nullopt: none is stocked.
std::optional<PartId> hose_of_size(const Plan& plan, const ConnectionPlan& line);

}  // namespace riserun::plan
