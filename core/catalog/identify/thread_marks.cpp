// Letters and sizes as they stand cast or stamped on a part.
#include "catalog/identify/identify.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace riserun::catalog {

namespace {

bool same_letters(std::string_view a, std::string_view b) {
  const auto same = [](char x, char y) {
    return std::toupper(static_cast<unsigned char>(x)) == std::toupper(static_cast<unsigned char>(y));
  };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), same);
}

bool has(const std::vector<std::string>& list, std::string_view word) {
  return std::any_of(list.begin(), list.end(), [&](const std::string& item) { return same_letters(item, word); });
}

/// What those letters stand for, added to the mark; false: nothing.
bool take_letters(const Catalog& catalog, std::string_view word, MarkSeen& mark) {
  const std::size_t before = mark.kinds.size();
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    const JointKind& kind = catalog.kind(KindId{row});
    if (!kind.recognition) continue;
    const bool male = has(kind.recognition->male_names, word) || same_letters(kind.male_notation, word);
    const bool female = has(kind.recognition->female_names, word) || same_letters(kind.female_notation, word);
    if (male || female || has(kind.recognition->marks, word)) mark.kinds.push_back(KindId{row});
    if (male != female) mark.end = male ? End::male : End::female;
  }
  return mark.kinds.size() > before;
}

/// Of a metric mark, `M20x1.5`: the kinds with that pitch in millimetres.
void keep_pitch(const Catalog& catalog, double pitch, MarkSeen& mark) {
  constexpr double kMillimetresPerInch = 25.4;
  constexpr double kRounding = 0.01;  // of the threads per inch in the table
  const auto has_not = [&](KindId kind) {
    const std::vector<JointSize>& sizes = catalog.kind(kind).sizes;
    return std::none_of(sizes.begin(), sizes.end(), [&](const JointSize& row) {
      return row.size == mark.size && std::abs(kMillimetresPerInch / row.threads_per_inch - pitch) < kRounding;
    });
  };
  std::vector<KindId> kinds = mark.kinds;
  std::erase_if(kinds, has_not);
  if (!kinds.empty()) mark.kinds = std::move(kinds);
}

std::string known_marks(const Catalog& catalog) {
  std::vector<std::string> marks;
  for (const JointKind& kind : catalog.kinds())
    if (kind.recognition)
      for (const std::string& mark : kind.recognition->marks)
        if (!has(marks, mark)) marks.push_back(mark);
  return fmt::format("{}", fmt::join(marks, ", "));
}

/// The end of the leading run of letters or of everything else.
std::size_t word_end(std::string_view text, std::size_t at) {
  const auto letter = [&](std::size_t i) { return std::isalpha(static_cast<unsigned char>(text[i])) != 0; };
  std::size_t end = at;
  while (end < text.size() && text[end] != ' ' && letter(end) == letter(at)) ++end;
  return end;
}

}  // namespace

std::variant<MarkSeen, MarkError> read_mark(const Catalog& catalog, std::string_view text) {
  MarkSeen mark;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == ' ') {
      ++at;
      continue;
    }
    const std::size_t end = word_end(text, at);
    const std::string_view word = text.substr(at, end - at);
    if (same_letters(word, "x") && mark.size) {
      const auto pitch = quantity::read_number(text.substr(end));
      if (const double* millimetres = std::get_if<double>(&pitch)) keep_pitch(catalog, *millimetres, mark);
      return mark;
    }
    if (std::isalpha(static_cast<unsigned char>(word.front())) != 0) {
      if (!take_letters(catalog, word, mark))
        return MarkError{fmt::format("'{}' is no mark of a thread known here; known are {}, with or without a size",
                                     word, known_marks(catalog)),
                         at};
    } else {
      const auto size = quantity::read_size_name(word);
      if (const auto* error = std::get_if<quantity::ReadError>(&size)) return MarkError{error->message, at};
      mark.size = catalog.find_size(std::get<std::string>(size));
      if (!mark.size) return MarkError{fmt::format("'{}' is no size of the catalog", word), at};
    }
    at = end;
  }
  if (mark.kinds.empty() && !mark.size)
    return MarkError{"no mark given; write what is cast or stamped in, as R 3/4", 0};
  return mark;
}

}  // namespace riserun::catalog
