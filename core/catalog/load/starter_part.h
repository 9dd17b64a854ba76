// The starter that `riserun new --part` writes.
#pragma once

#include <string>

namespace riserun::catalog {

/// A commented catalog file of one's own with a part that loads and is found.
const std::string& starter_part();

}  // namespace riserun::catalog
