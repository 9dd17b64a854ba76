// What the plan's topics are called where a program reads them.
#pragma once

#include "plan/plan.h"

#include <string_view>

namespace riserun::report {

/// `leak_test`.
std::string_view key_of(plan::Topic topic);
/// `ok`, `caution`, `refused`.
std::string_view key_of(plan::Status status);

}  // namespace riserun::report
