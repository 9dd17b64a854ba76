// The riser by itself, for who has no job file: the same stage as in a whole plan, on a reservoir of which only the
// inside measures must be known.
#pragma once

#include "plan/plan.h"

namespace riserun::plan {

struct RiserAlone {
  RiserPlan plan;
  Remarks remarks;
};

/// @param reservoir its inside measures must be positive. The riser hangs in its first port; a usual bung is assumed
///        when it has none.
RiserAlone plan_riser_alone(const Catalog& catalog, JobReservoir reservoir, JobRiser riser, Bin bin);

}  // namespace riserun::plan
