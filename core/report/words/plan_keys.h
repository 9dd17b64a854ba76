// What the plan's topics are called where a program reads them.
#pragma once

#include "plan/plan.h"

#include <string>
#include <string_view>

namespace riserun::report {

/// `leak_test`.
std::string_view key_of(plan::Topic topic);
/// `ready`, `not yet`, `refused`: the words are the same where a person reads them.
std::string_view key_of(plan::Verdict verdict);
/// `not yet`, `refused`.
std::string_view key_of(plan::Severity severity);

std::string_view key_of(plan::Place place);

/// What stands at the foot of each page: the job's name, where it has one, and its verdict.
std::string name_and_verdict(const plan::Plan& plan);

}  // namespace riserun::report
