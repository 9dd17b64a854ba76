// The starter that `riserun new` writes.
#pragma once

#include <string>

namespace riserun::plan {

/// A commented job that loads and solves, for `riserun new`.
const std::string& starter_job();

}  // namespace riserun::plan
