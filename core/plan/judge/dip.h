// The opening of the lid that a dip rod and a funnel go in by.
#pragma once

#include "plan/plan.h"

namespace riserun::plan {

/// What is opened without taking anything apart that is made up for good: a port that nothing but a plug is on, else
/// one with a vent alone; nullptr: there is none.
const JobPort* dip_port(const Plan& plan);

}  // namespace riserun::plan
