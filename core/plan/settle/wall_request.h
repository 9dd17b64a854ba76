// What judges the walls, of a job with nothing missing.
#pragma once

#include "plan/settle/settled.h"
#include "reservoir/box_panels.h"

namespace riserun::plan {

/// @param charge  depth of the water that stands on the floor and the sides
reservoir::WallRequest wall_request(const Job& job, const Settled& settled, Length charge);

/// Yield over the factor of safety that holds where compressed air lifts water (reservoir::kAirLiftFactor).
Stress quarter_of_yield(const Settled& settled);

}  // namespace riserun::plan
