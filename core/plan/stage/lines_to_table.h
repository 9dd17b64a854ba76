// In which order the runs are built on, and which of them the table is set down onto.
#pragma once

#include "plan/plan.h"
#include "plan/stage/hose_order.h"

#include <vector>

namespace riserun::plan {

/// What is built on earlier stands before: what guards the reservoir, what joins table and tank, the air's feed last.
enum class BuildRank { relief, gauge, other, to_table, feed };

BuildRank build_rank(const Plan& plan, const ConnectionPlan& connection);

/// Those that go together, by rank, each rank as the plan has it.
std::vector<const ConnectionPlan*> in_build_order(const Plan& plan);

/// The hose cannot be bent on, its end on the table is in the floor and that on the tank in the lid: the table is set
/// down onto it.
bool table_goes_onto(const Plan& plan, const ConnectionPlan& connection, const HoseOnLast& hose);

/// The barb that the hose goes onto last is the lower one.
/// @pre table_goes_onto
bool hose_hangs_on_table(const Plan& plan, const ConnectionPlan& connection, const HoseOnLast& hose);

}  // namespace riserun::plan
