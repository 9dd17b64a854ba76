// What `riserun explain --json` prints.
#pragma once

#include "report/words/explanations.h"

#include <string>
#include <vector>

namespace riserun::report {

/// A list of objects: code, means, why, mend and source.
std::string explanations_json(const std::vector<Explanation>& rows);

}  // namespace riserun::report
