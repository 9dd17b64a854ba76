#include "catalog/yaml/nearest_name.h"

#include "quantity/plain_ascii.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace riserun::catalog {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the table of optimal string alignment: the one being filled and the two above it.
  std::vector<std::size_t> two_up(b.size() + 1), up(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) up[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = quantity::lower(a[i - 1]) == quantity::lower(b[j - 1]);
      row[j] = std::min({up[j] + 1, row[j - 1] + 1, up[j - 1] + (same ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && quantity::lower(a[i - 1]) == quantity::lower(b[j - 2]) &&
                           quantity::lower(a[i - 2]) == quantity::lower(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], two_up[j - 2] + 1);
    }
    std::swap(two_up, up);
    std::swap(up, row);
  }
  return up[b.size()];
}

std::optional<std::string_view> nearest_name(std::string_view word, std::span<const std::string_view> names) {
  constexpr std::size_t kLongestWord = 64;  // longer is no mistyped name
  if (word.size() > kLongestWord) return std::nullopt;
  std::optional<std::string_view> best;
  std::size_t least = 0;
  for (const std::string_view name : names) {
    const std::size_t distance = edit_distance(word, name);
    const std::size_t allowed = std::max<std::size_t>(1, std::max(word.size(), name.size()) / 3);
    if (distance > allowed || distance >= name.size() || (best && distance >= least)) continue;
    best = name;
    least = distance;
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> names) {
  const std::optional<std::string_view> near = nearest_name(word, names);
  return near ? "; did you mean '" + std::string(*near) + "'?" : std::string();
}

std::string either_of(std::span<const std::string_view> names) {
  std::string result;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) result += i + 1 == names.size() ? " or " : ", ";
    result += names[i];
  }
  return result;
}

}  // namespace riserun::catalog
