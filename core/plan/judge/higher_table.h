// Room between reservoir and table where the heights of both are written: it is made by the table's height.
#pragma once

#include "plan/plan.h"

#include <optional>

namespace riserun::plan {

/// The table so much higher that the hose of that connection bends into its gap, or that its rigid run goes in, with
/// what is then to be written for its floor and for the face of its port; to the next 1/8 in. nullopt: the gap has
/// room, or the job gives the gap and not both heights, and another gap may be written as it is.
std::optional<Mend> higher_table(const Job& job, const ConnectionPlan& line);

/// A box that is higher inside, for a charge that leaves no air in the one that is there; nullopt: it does leave some.
std::optional<Mend> higher_reservoir(const Job& job, Length charge);

}  // namespace riserun::plan
