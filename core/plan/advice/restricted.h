// A restrictor put into the job's runs.
#pragma once

#include "plan/job/job.h"

namespace riserun::plan {

/// Before each regulator that a need names: the restrictors with the widest hole that is sold up to that one, in place
/// of those that stand there. Where no need names a regulator or none is sold so narrow, the key alone.
void restrict_before_regulators(const Catalog& catalog, Job& job, Length hole);

}  // namespace riserun::plan
