// What stands beside a riser that is drawn.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// `riser, cut 11 in`; of a refused plan no length, as nothing is cut for it.
std::string riser_label(const plan::Plan& plan, quantity::UnitSystem units);

}  // namespace riserun::report
