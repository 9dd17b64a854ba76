// The leak test's sheet and the order of work as JSON.
#pragma once

#include "plan/plan.h"

#include <nlohmann/json_fwd.hpp>

namespace riserun::report {

/// null where no test is possible.
nlohmann::ordered_json leak_test_object(const plan::Plan& plan, UnitSystem units);
/// [{"phase", "for", "text", "fact"}], first to last.
nlohmann::ordered_json work_array(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
