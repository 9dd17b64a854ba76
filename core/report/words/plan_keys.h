// What the plan's topics are called where a program reads them.
#pragma once

#include "plan/plan.h"

#include <string_view>

namespace riserun::report {

/// `leak_test`.
std::string_view key_of(plan::Topic topic);
/// `ready`, `not yet`, `refused`: the words are the same where a person reads them.
std::string_view key_of(plan::Verdict verdict);
/// `not yet`, `refused`.
std::string_view key_of(plan::Severity severity);

std::string_view key_of(plan::Place place);

}  // namespace riserun::report
