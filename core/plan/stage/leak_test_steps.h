// How the leak test goes: rungs and holds, what the gauge can tell, the steps, and what is brushed in which order.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Rungs, holds and readings; at what it is brushed, and what the gauge sees in the hold then.
/// @param setting  of the regulator in use
/// @pre pressure, gauge and air of the test are known, and it is possible
void time_leak_test(const Inputs& inputs, GaugePressure setting, LeakTestPlan& test);

/// The steps, and the welds in the order in which they are brushed.
/// @param setting  of the regulator in use
/// @pre the rest of the sheet is known, and the test is possible
void write_leak_test(const Inputs& inputs, GaugePressure setting, LeakTestPlan& test);

/// Ports whose plugs are the test's alone.
quantity::Texts plugs_to_take_out(const LeakTestPlan& test);

/// The port's plug in the test is that of the job, which stays.
bool closes_for_good(const LeakTestPlan& test, const std::string& port);

/// The test is fed through the job's own regulator, whose setting is marked on the way up.
bool regulator_is_marked(const LeakTestPlan& test);

/// The whole test as one step of the order of work, and how the regulator's knob is set for the first fill: by the mark
/// of the test, else by the gauge on the reservoir with a little air flowing.
Fact work_of_leak_test(const LeakTestPlan& test);
Fact work_of_knob(const Plan& plan);

}  // namespace riserun::plan
