// The far end of the leak test's hose: what joins the supply, its restrictor and the regulator of the test up.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// Puts the nipples and bushings between the supply's port, the restrictor and the regulator into `at_supply`, where
/// they stand. They are those that the job lends and the rig left, then the bin's, then bought ones. Where no run of
/// them goes together it stays as it is.
///
/// @param left  what the job and the rig left of the bin; taken of
void join_up_at_supply(const Inputs& inputs, const chain::Finder& finder,
                       const std::vector<ConnectionPlan>& connections, LeakTestPlan& test, BinLeft& left);

}  // namespace riserun::plan
