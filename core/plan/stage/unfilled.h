// Why the table does not come to its depth, and what mends it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// A setting so little over the pressure to finish, as a share of it, comes to rest with it, short of it.
inline constexpr double kBalances = 1e-3;

/// Refuses a fill that ends before the table is full: riser uncovered, table over its rim, air that gives out. A
/// setting that is too low has its own finding.
void refuse_by_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
