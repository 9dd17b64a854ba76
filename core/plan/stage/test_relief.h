// The relief valve of the leak test's rig: whether it holds what comes when the regulator of the test sticks wide open.
#pragma once

#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// What the job lends to the test at the supply, as the air meets it: restrictor and regulators, up to the one that
/// sets the pressure. Empty: no regulator stands in a feed.
std::vector<RigPart> lent_at_supply(const Catalog& catalog, const std::vector<Way>& ways);

/// A regulator of the job that does not go up to the test's pressure stays where it is: the test gets one that does, of
/// the same inlet where that is sold. Where none is sold the supply is of no use to it.
void reach_test_pressure(const Inputs& inputs, LeakTestPlan& test);

/// Sets what the valve passes and what the supply gives at the most that the walls may see of it; where that is more,
/// and a smaller hole that holds it is sold, that restrictor takes the place of the job's own.
/// @param valve  of the rig
/// @param limit  of the walls
void size_relief_of_test(const Inputs& inputs, const transfer::System& system, PartId valve, GaugePressure limit,
                         LeakTestPlan& test);

/// What is not lent by the job comes out of the bin where it is there, else it is bought.
void take_for_supply(LeakTestPlan& test, BinLeft& left);

}  // namespace riserun::plan
