#include "catalog/words/hole_words.h"

#include "catalog/yaml/nearest_name.h"
#include "quantity/nearly.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace riserun::catalog {

namespace {

struct Hole {
  Length across{};
  std::string_view written;  // "1/16 in"
  std::size_t offset = 0;
};

/// The length right before the word.
std::optional<Hole> hole_in(std::string_view words) {
  constexpr std::string_view kWord = " hole";
  const std::size_t end = words.find(kWord);
  if (end == std::string_view::npos || end == 0) return std::nullopt;
  // A number and its unit, in one word or in two.
  std::size_t begin = end;
  for (int word = 0; word < 2 && begin != std::string_view::npos && begin > 0; ++word) {
    const std::size_t space = words.rfind(' ', begin - 1);
    begin = space == std::string_view::npos ? 0 : space;
    const std::size_t from = begin == 0 && words.front() != ' ' ? 0 : begin + 1;
    const auto length = quantity::read_length(words.substr(from, end - from));
    if (const auto* across = std::get_if<Length>(&length)) return Hole{*across, words.substr(from, end - from), from};
  }
  return std::nullopt;
}

}  // namespace

std::optional<NotationError> no_such_hole(const Catalog& catalog, std::string_view words,
                                          const std::vector<PartId>& parts) {
  const auto asked = hole_in(words);
  if (!asked) return std::nullopt;
  const Length half_a_step = inches(1.0 / 128.0);  // of the drills
  std::vector<Hole> there;
  for (const PartId id : parts) {
    const auto hole = hole_in(catalog.part(id).name);
    if (!hole) continue;
    if (quantity::at_most(hole->across, asked->across + half_a_step) &&
        quantity::at_most(asked->across, hole->across + half_a_step))
      return std::nullopt;
    there.push_back(*hole);
  }
  if (there.empty()) return std::nullopt;
  std::sort(there.begin(), there.end(), [](const Hole& a, const Hole& b) { return a.across < b.across; });
  std::vector<std::string_view> names;
  for (const Hole& hole : there)
    if (names.empty() || names.back() != hole.written) names.push_back(hole.written);
  return NotationError{fmt::format("none has a hole of {}; there are {}", asked->written, either_of(names)),
                       asked->offset,
                       {names.begin(), names.end()},
                       quantity::mistake::kUnknownPart};
}

}  // namespace riserun::catalog
