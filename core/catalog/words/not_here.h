// Things of the trade that the catalog has not, and what is asked for in their place.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace riserun::catalog {

struct NotHere {
  std::string_view instead;  // a sentence
  std::size_t offset = 0;    // where in the words the thing is named
};

/// nullopt: nothing that is known to be missing is named.
std::optional<NotHere> not_here(std::string_view words);

}  // namespace riserun::catalog
