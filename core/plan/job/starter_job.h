// The starter that `riserun new` writes.
#pragma once

#include "quantity/unit_system.h"

#include <string>

namespace riserun::plan {

/// A commented job that loads and solves, for `riserun new`; its measures in these units, threads as they are called.
const std::string& starter_job(quantity::UnitSystem units = quantity::UnitSystem::inch);

}  // namespace riserun::plan
