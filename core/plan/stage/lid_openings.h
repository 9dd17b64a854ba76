// The holes and slots that are cut in the lid before it goes on, over what is welded to it from outside alone.
#pragma once

#include "plan/lid_map.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// Over ties, bars of the lid, upright bars of the sides and baffles: each with its measures, its number and its
/// places. Empty: nothing that the job places ends at the lid, or it is on already.
std::vector<LidOpenings> lid_openings(const Inputs& inputs, const WallsPlan& walls);

/// How they are cut: number, measures and places.
Fact cut_of(const LidOpenings& openings);
/// What the lid is welded to through them.
Fact weld_through(const LidOpenings& openings);

}  // namespace riserun::plan
