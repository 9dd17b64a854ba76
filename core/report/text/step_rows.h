// Lists of steps as text.
#pragma once

#include "report/text/text_layout.h"
#include "report/words/step_lists.h"

#include <string>

namespace riserun::report {

/// The list under its title, numbered from `next` on, which counts on. The steps of one connection are one of the
/// list's, under its name, with the numbers of its own build order.
std::string step_rows(const StepList& list, const Style& style, std::size_t& next);

}  // namespace riserun::report
