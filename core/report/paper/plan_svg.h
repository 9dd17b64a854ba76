// The drawings of a plan as one sheet, and one by one for a page that holds them.
#pragma once

#include "plan/plan.h"
#include "report/text/text_layout.h"

#include <string>
#include <vector>

namespace riserun::report {

/// A file of its own, as wide as the paper of the units between its margins, as high as it takes; text stays text.
std::string plan_svg(const plan::Plan& plan, const std::string& job_file, const Style& style);

/// An element for each drawing, its title in it.
std::vector<std::string> svg_pictures(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
