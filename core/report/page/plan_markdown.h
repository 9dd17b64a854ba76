// A plan's card and lists in Markdown.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// CommonMark 0.30; what is to be ticked are task list items, which some programs show as boxes.
std::string plan_markdown(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
