// Spare parts for the connections of a plan.
#pragma once

#include "chain/ask/spares.h"
#include "plan/plan.h"

namespace riserun::plan {

/// One set for the whole job: whichever one bought part of its chains is missing, that chain can still be made. A stock
/// out's `chosen` is a row of Plan::connections. Each missing part is made up for with at most two spares.
/// Runs that make a measured gap are left out: a stand-in would have to make it too.
chain::Spares spares_for(const Plan& plan);

}  // namespace riserun::plan
