// Numbers that may count parts or measure them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace riserun::catalog {

struct CountedWords {
  std::string number;
  std::string rest;  // the words without it
  std::string one;   // the same of a single one: "ball valve"
};

/// `2 ball valves`, `unions x2`: a number that may be a count. One that only inches can be is none: `2 in ball valves`.
std::optional<CountedWords> counted_in(std::string_view words);

}  // namespace riserun::catalog
