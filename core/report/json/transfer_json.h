// Fill and drain as JSON.
#pragma once

#include "plan/plan.h"

#include <nlohmann/json_fwd.hpp>

namespace riserun::report {

/// {"fill", "drain", "losses"}: SI numbers with the unit in the key.
nlohmann::ordered_json transfer_object(const plan::Plan& plan);

}  // namespace riserun::report
