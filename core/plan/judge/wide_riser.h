// A riser's pipe that is wider than its bung: of a whole plan, and of a riser by itself.
#pragma once

#include "plan/plan.h"

#include <optional>

namespace riserun::plan {

/// What is to be said of a pipe wider than the thread that it hangs in; nullopt: it is not, or is not screwed in.
/// @param bung  nullptr: an assumed one, which fits
std::optional<Finding> wider_than_its_bung(const Catalog& catalog, const JobPort* bung, const RiserPlan& riser);

}  // namespace riserun::plan
