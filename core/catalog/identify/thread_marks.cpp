// Letters and sizes as they stand cast or stamped on a part.
#include "catalog/identify/identify.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <regex>

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

/// What those letters stand for, added to the mark; false: nothing. They say which end it is where every kind that has
/// them says so: M is cast on males and females.
bool take_letters(const Catalog& catalog, std::string_view word, MarkSeen& mark) {
  const std::size_t before = mark.kinds.size();
  std::size_t males = 0;
  std::size_t females = 0;
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    const JointKind& kind = catalog.kind(KindId{row});
    if (!kind.recognition) continue;
    const bool male = has(kind.recognition->male_names, word) || same_letters(kind.male_notation, word);
    const bool female = has(kind.recognition->female_names, word) || same_letters(kind.female_notation, word);
    if (male || female || has(kind.recognition->marks, word)) mark.kinds.push_back(KindId{row});
    if (male != female) ++(male ? males : females);
  }
  const std::size_t taken = mark.kinds.size() - before;
  if (taken > 0 && (males == taken || females == taken)) mark.end = males == taken ? End::male : End::female;
  return taken > 0;
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

bool has_size(const Catalog& catalog, KindId kind, SizeId size) {
  const std::vector<JointSize>& rows = catalog.kind(kind).sizes;
  return std::any_of(rows.begin(), rows.end(), [&](const JointSize& row) { return row.size == size; });
}

/// A number behind letters that no size of theirs goes by is a dash size where theirs are, as in JIC 6: sixteenths of
/// an inch of tube.
void settle_dash_size(const Catalog& catalog, std::string_view number, MarkSeen& mark) {
  const auto named = [&](SizeId size) {
    return std::any_of(mark.kinds.begin(), mark.kinds.end(),
                       [&](KindId kind) { return has_size(catalog, kind, size); });
  };
  if (!mark.size || named(*mark.size)) return;
  const auto dash = quantity::read_size_name("-" + std::string(number));
  const auto* name = std::get_if<std::string>(&dash);
  const auto size = name == nullptr ? std::nullopt : catalog.find_size(*name);
  if (size && named(*size)) mark.size = size;
}

/// A designation with its threads per inch, 3/4-14 (ASME B1.20.1) or 7/8-14 (ASME B1.1); false: it is none.
bool take_designation(const Catalog& catalog, std::string_view word, MarkSeen& mark) {
  const std::size_t dash = word.rfind('-');
  if (dash == std::string_view::npos || dash == 0) return false;
  const auto across = quantity::read_number(word.substr(0, dash));
  const auto threads = quantity::read_number(word.substr(dash + 1));
  const auto* inch = std::get_if<double>(&across);
  const auto* count = std::get_if<double>(&threads);
  constexpr double kCoarsest = 4.0;  // threads per inch of the largest bolts
  if (inch == nullptr || count == nullptr || *inch <= 0.0 || *count < kCoarsest) return false;
  const auto size = quantity::read_size_name(word.substr(0, dash));
  if (const auto* name = std::get_if<std::string>(&size)) mark.size = catalog.find_size(*name);
  mark.pitched = PitchedMark{std::string(word), inches(*inch), *count};
  return true;
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

/// G 3/4 A or B: the class behind the size, which males alone have (ISO 228-1, 5: from memory).
bool is_class_of_parallel_pipe_thread(const Catalog& catalog, std::string_view word, const MarkSeen& mark) {
  const auto is_parallel = [&](KindId kind) { return catalog.kind(kind).standard.starts_with("ISO 228"); };
  return (same_letters(word, "A") || same_letters(word, "B")) &&
         std::any_of(mark.kinds.begin(), mark.kinds.end(), is_parallel);
}

/// Whole inches and their fraction are one number, with a space between them too: 1 1/16-12. A class is none: 150 1/2.
std::string with_joined_fractions(std::string_view text) {
  static const std::regex kSpaced("(^|[^0-9./])([0-9]{1,2}) ([0-9]+/[0-9]+)");
  return std::regex_replace(std::string(text), kSpaced, "$1$2-$3");
}

/// Reads one word between blanks into the mark, piece by piece; what is wrong with it, if anything.
std::optional<MarkError> take_word(const Catalog& catalog, std::string_view text, std::size_t at,
                                   std::string_view& number, MarkSeen& mark) {
  while (at < text.size() && text[at] != ' ') {
    const std::size_t end = word_end(text, at);
    const std::string_view word = text.substr(at, end - at);
    if (mark.size && is_class_of_parallel_pipe_thread(catalog, word, mark)) {
      mark.end = End::male;
    } else if (std::isalpha(static_cast<unsigned char>(word.front())) != 0) {
      if (!take_letters(catalog, word, mark))
        return MarkError{fmt::format("'{}' is no mark of a thread known here; known are {}, with or without a size",
                                     word, known_marks(catalog)),
                         at};
      mark.letters += word.size();
    } else {
      const auto size = quantity::read_size_name(word);
      const auto* name = std::get_if<std::string>(&size);
      const auto known = name == nullptr ? std::nullopt : catalog.find_size(*name);
      number = word;
      if (known) mark.size = known;
      if (!known && !take_designation(catalog, word, mark)) {
        const auto* error = std::get_if<quantity::ReadError>(&size);
        return MarkError{error ? error->message : fmt::format("'{}' is no size of the catalog", word), at};
      }
    }
    at = end;
  }
  return std::nullopt;
}

/// A grade or class, as A105 and 3000; not a fraction that was not finished.
bool is_grade(std::string_view word) {
  return word.find('/') == std::string_view::npos && word.find_first_of("0123456789") != std::string_view::npos;
}

}  // namespace

std::variant<MarkSeen, MarkError> read_mark(const Catalog& catalog, std::string_view as_stamped) {
  const std::string joined = with_joined_fractions(as_stamped);  // no longer, so that offsets hold
  const std::string_view text = joined;
  MarkSeen mark;
  std::string_view number;
  std::optional<MarkError> first_error;
  bool only_grades = true;  // of what was not read
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t blank = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, blank - at);
    // M20 x 1.5, and M20x1.5 without blanks.
    const std::size_t pitch_at = text.find_first_of("xX", at);
    const std::size_t pitch = pitch_at < blank ? text.find_first_not_of(' ', pitch_at + 1) : std::string_view::npos;
    const bool has_pitch = pitch != std::string_view::npos && (pitch_at > at || mark.size) &&
                           std::isdigit(static_cast<unsigned char>(text[pitch])) != 0;
    MarkSeen tried = mark;
    std::string_view tried_number = number;
    auto error = take_word(catalog, has_pitch ? text.substr(0, pitch_at) : text, at, tried_number, tried);
    const bool is_read = !error;
    if (is_read) {
      mark = std::move(tried);
      number = tried_number;
    } else if (!word.empty()) {
      mark.unread.emplace_back(word);
      only_grades = only_grades && is_grade(word);
      if (!first_error) first_error = std::move(error);
      if (word.find('/') != std::string_view::npos) return *first_error;
    }
    if (is_read && has_pitch && mark.size) {
      const auto number_of_pitch = quantity::read_number(text.substr(pitch));
      if (const double* millimetres = std::get_if<double>(&number_of_pitch)) keep_pitch(catalog, *millimetres, mark);
      return mark;
    }
    at = blank + 1;
  }
  if (!mark.pitched) settle_dash_size(catalog, number, mark);
  const bool says_nothing = mark.kinds.empty() && !mark.size && !mark.pitched;
  // Letters that are none of a thread known here may be those of one that is not.
  if (first_error && (says_nothing || (mark.kinds.empty() && !only_grades))) return *first_error;
  if (says_nothing) return MarkError{"no mark given; write what is cast or stamped in, as R 3/4", 0};
  return mark;
}

}  // namespace riserun::catalog
