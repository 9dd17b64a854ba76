// What somebody meant who wrote a name that there is not.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace riserun::catalog {

/// What is nearest to `word` among the names, if anything is near enough to have been meant (edit distance; a letter
/// swapped with its neighbour counts once, upper and lower case are the same).
std::optional<std::string_view> nearest_name(std::string_view word, std::span<const std::string_view> names);
/// Edit distance as above.
std::size_t edit_distance(std::string_view a, std::string_view b);
/// `"NTP"; did you mean "NPT"?`-style hint to append: `; did you mean 'NPT'?`, or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> names);
/// `a, b or c`
std::string either_of(std::span<const std::string_view> names);

}  // namespace riserun::catalog
