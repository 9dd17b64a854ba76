// The gauge that the regulator's knob is set by, and finer ones.
#pragma once

#include "plan/plan.h"
#include "plan/remarks.h"

#include <optional>

namespace riserun::plan {

/// The gauge that shows the setting best, and is seen: nothing that shuts stands before it. nullptr: none.
const Way* gauge_read(const Plan& plan);

/// One that is sold in its place, by which the knob may stand no farther over its setting than leaves a relief valve
/// shut; nullopt: none, or what is there is as fine.
/// @param opens  the lowest pressure at which the valve may open
std::optional<Mend> finer_gauge_under(const Plan& plan, GaugePressure opens);

}  // namespace riserun::plan
