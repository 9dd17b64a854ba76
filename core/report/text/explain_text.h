// What `riserun explain` prints.
#pragma once

#include "report/words/explanations.h"

#include <string>

namespace riserun::report {

/// One code: what it means, why it matters, what mends it, where that comes from.
std::string explain_text(const Explanation& row);
/// Every code with what it means, by itself on its lines.
std::string explanations_text();

}  // namespace riserun::report
