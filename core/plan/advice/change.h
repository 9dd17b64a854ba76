// A mend, followed: the job as it would be.
#pragma once

#include "plan/job/job.h"
#include "plan/remarks.h"

namespace riserun::plan {

/// The job with all these changes. A key that the job has is set to the value; "connections" adds one that runs from a
/// port of its own in the lid and ends in the part.
/// @pre every key is one of those that mends change (see change.cpp), its value of the key's own dimension
Job changed(const Catalog& catalog, Job job, const Changes& changes);

}  // namespace riserun::plan
