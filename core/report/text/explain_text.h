// What `riserun explain` prints.
#pragma once

#include "report/text/text_layout.h"
#include "report/words/explanations.h"

#include <string>

namespace riserun::report {

/// One code: what it means, why it matters, what mends it, where that comes from.
std::string explain_text(const Explanation& row, const Style& style);
/// Every code with what it means, by itself on its lines.
std::string explanations_text(const Style& style);

}  // namespace riserun::report
