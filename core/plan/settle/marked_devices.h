// `gauge`, `relief valve`, `regulator`: words that name no pressure, of devices that are sold for many.
#pragma once

#include "catalog/catalog.h"
#include "plan/job/job.h"
#include "plan/remarks.h"

#include <optional>

namespace riserun::plan {

/// The job with each gauge, relief valve and regulator whose words leave its pressure open taken as the lowest that
/// suits the air (common practice): a relief valve from 1.2 times the setting on, a gauge that reads to twice the
/// setting or more, a regulator with the setting in the lower two thirds of its range; the highest that is sold where
/// none does. Where the job has no setting, half as much again as the water's height from the reservoir's floor to the
/// depth wanted in the table stands for it, as a setting is worked out, and the relief valve is the lowest from 0.85
/// times that on, as such a setting goes down for it. A check valve whose words leave its spring open has the lightest,
/// in a run of air that may have what is ordered and where the bin has none. What is taken is written down. A run with
/// two regulators keeps its words.
///
/// @param least_relief  that such a relief valve is to open at, at least, where that is known
Job with_marks(const Catalog& catalog, Job job, std::optional<GaugePressure> least_relief, Remarks& remarks);

/// Words of the job leave open at what a relief valve opens.
bool names_no_relief_mark(const Catalog& catalog, const Job& job);

}  // namespace riserun::plan
