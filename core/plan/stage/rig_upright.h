// Which opening of the rig the relief valve goes into, so that it stands upright: lying flat it opens elsewhere.
#pragma once

#include "chain/ask/run.h"
#include "plan/job/job.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Row of the relief valve's end in a rig's run, whose ends are gauge, relief valve and feed.
inline constexpr std::size_t kReliefOfRig = 1;

/// Gives the relief valve the opening that can look straight up, changing it round with what goes into the same part by
/// a thread of the same kind where it must. @return where it goes, and how that is turned
Fact stand_relief_upright(const Inputs& inputs, const JobPort& port, chain::Run& rig);

}  // namespace riserun::plan
