// The ways out of the reservoir and of the table that a hand opens: what runs out by them, and how long that takes.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// In the order of the ways; a line back to the reservoir with a valve in it is one, too, with the head that the
/// table's own water gives: what the line falls on its way is not counted. The reservoir is open to the air; the water
/// stands as for a fill, or the table is full. A port whose height is not said stands as low as it can be welded in.
std::vector<DrainPlan> plan_drains(const Inputs& inputs, const std::vector<ConnectionPlan>& connections,
                                   const std::vector<Way>& ways, const Levels& levels);

}  // namespace riserun::plan
