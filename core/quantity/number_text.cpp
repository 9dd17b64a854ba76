#include "quantity/number_text.h"

#include "quantity/plain_ascii.h"
#include "quantity/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <optional>

namespace riserun::quantity {

namespace {

/// How a sign joins what stands before it.
enum class Joins { freely, as_fraction, after_letter };

struct Spelling {
  std::string_view sign;
  std::string_view plain;
  Joins joins = Joins::freely;
};

constexpr std::array kSpellings = std::to_array<Spelling>({
    // Spaces: no-break, en quad to hair space, narrow no-break, medium mathematical, ideographic.
    {"\u00a0", " "},
    {"\u2000", " "},
    {"\u2001", " "},
    {"\u2002", " "},
    {"\u2003", " "},
    {"\u2004", " "},
    {"\u2005", " "},
    {"\u2006", " "},
    {"\u2007", " "},
    {"\u2008", " "},
    {"\u2009", " "},
    {"\u200a", " "},
    {"\u202f", " "},
    {"\u205f", " "},
    {"\u3000", " "},
    // Hyphens, dashes, minus; fraction and division slash.
    {"\u2010", "-"},
    {"\u2011", "-"},
    {"\u2012", "-"},
    {"\u2013", "-"},
    {"\u2212", "-"},
    {"\u2044", "/"},
    {"\u2215", "/"},
    // Primes, and the quotation marks that word processors make of them.
    {"\u2032", "'"},
    {"\u2018", "'"},
    {"\u2019", "'"},
    {"\u02b9", "'"},
    {"\u2033", "\""},
    {"\u201c", "\""},
    {"\u201d", "\""},
    {"\u02ba", "\""},
    // Degrees, micro, cent, middle dot, superscripts, the subscript of water.
    {"\u00b0", "deg"},
    {"\u00ba", "deg"},
    {"\u2103", "degC"},
    {"\u2109", "degF"},
    {"\u00b5", "u"},
    {"\u03bc", "u"},
    {"\u00a2", "cents"},
    {"\u00b7", "-", Joins::after_letter},
    {"\u22c5", "-", Joins::after_letter},
    {"\u00b2", "2", Joins::after_letter},
    {"\u00b3", "3", Joins::after_letter},
    {"\u2082", "2", Joins::after_letter},
    // Fractions.
    {"\u00bc", "1/4", Joins::as_fraction},
    {"\u00bd", "1/2", Joins::as_fraction},
    {"\u00be", "3/4", Joins::as_fraction},
    {"\u2150", "1/7", Joins::as_fraction},
    {"\u2151", "1/9", Joins::as_fraction},
    {"\u2152", "1/10", Joins::as_fraction},
    {"\u2153", "1/3", Joins::as_fraction},
    {"\u2154", "2/3", Joins::as_fraction},
    {"\u2155", "1/5", Joins::as_fraction},
    {"\u2156", "2/5", Joins::as_fraction},
    {"\u2157", "3/5", Joins::as_fraction},
    {"\u2158", "4/5", Joins::as_fraction},
    {"\u2159", "1/6", Joins::as_fraction},
    {"\u215a", "5/6", Joins::as_fraction},
    {"\u215b", "1/8", Joins::as_fraction},
    {"\u215c", "3/8", Joins::as_fraction},
    {"\u215d", "5/8", Joins::as_fraction},
    {"\u215e", "7/8", Joins::as_fraction},
});

/// The plain form of one written character after `before`, which ends the plain text so far.
std::string spelled_out(std::string_view character, std::string_view before, std::string_view rest) {
  const char c = character.front();
  if (c == '\t' || c == '\n' || c == '\r') return " ";
  if (character.size() == 1) return std::string(1, c >= ' ' && c < 0x7f ? c : PlainText::kUnreadable);
  const auto found = std::find_if(kSpellings.begin(), kSpellings.end(),
                                  [&](const Spelling& spelling) { return spelling.sign == character; });
  if (found == kSpellings.end()) return std::string(1, PlainText::kUnreadable);
  const char last = before.empty() ? ' ' : before.back();
  std::string plain(found->plain);
  if (found->joins == Joins::after_letter && !is_letter(last)) return std::string(1, PlainText::kUnreadable);
  if (found->joins == Joins::as_fraction) {
    if (is_digit(last)) plain.insert(0, 1, '-');
    // `½5` is not one twenty-fifth.
    if (!rest.empty() && (is_digit(rest.front()) || rest.front() == '/' || rest.front() == '.')) {
      plain += PlainText::kUnreadable;
    }
  }
  return plain;
}

struct Fraction {
  double value = 0.0;
  bool proper = false;
  std::size_t end = 0;
};

std::size_t end_of_digits(const std::string& text, std::size_t at) {
  while (at < text.size() && is_digit(text[at])) ++at;
  return at;
}

/// nullopt: too large.
std::optional<std::int64_t> whole_number(std::string_view digits) {
  std::int64_t value = 0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  constexpr std::int64_t kLargest = 1'000'000'000;
  if (result.ec != std::errc() || value > kLargest) return std::nullopt;
  return value;
}

/// `3/4` at `begin`, where `slash` is the place of its slash.
std::variant<Fraction, ReadError> scan_fraction(const PlainText& text, std::size_t begin, std::size_t slash) {
  const std::size_t end = end_of_digits(text.plain, slash + 1);
  const std::string shown(text.written_for(begin, end));
  if (end == slash + 1) return read_error(text, slash, "the fraction has no denominator; write it like 3/4");
  if (end < text.plain.size() && (text.plain[end] == '.' || text.plain[end] == '/')) {
    return read_error(text, end, "a fraction is one whole number over another, like 3/4");
  }
  const std::string_view plain = text.plain;
  const auto above = whole_number(plain.substr(begin, slash - begin));
  const auto below = whole_number(plain.substr(slash + 1, end - slash - 1));
  if (!above || !below) return read_error(text, begin, "the fraction has too many digits");
  if (*below == 0) return read_error(text, slash + 1, fmt::format("the fraction {} has a zero denominator", shown));
  return Fraction{static_cast<double>(*above) / static_cast<double>(*below), *above > 0 && *above < *below, end};
}

/// The place of the slash of a fraction that begins at `at`, if one does.
std::optional<std::size_t> slash_of_fraction(const std::string& text, std::size_t at) {
  const std::size_t end = end_of_digits(text, at);
  if (end == at || end >= text.size() || text[end] != '/' || end + 1 >= text.size()) return std::nullopt;
  if (!is_digit(text[end + 1])) return std::nullopt;
  return end;
}

/// Where the fraction of a mixed number begins, after the whole number that ends at `at`: `-1/2`, ` 1/2`, `- 1/2`.
std::optional<std::size_t> begin_of_mixed_fraction(const std::string& text, std::size_t at) {
  std::size_t begin = at;
  if (begin < text.size() && text[begin] == '-') ++begin;
  begin = skip_spaces(text, begin);
  if (begin == at || !slash_of_fraction(text, begin)) return std::nullopt;
  return begin;
}

std::size_t end_of_exponent(const std::string& text, std::size_t at) {
  if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return at;
  std::size_t digits = at + 1;
  if (digits < text.size() && (text[digits] == '-' || text[digits] == '+')) ++digits;
  const std::size_t end = end_of_digits(text, digits);
  return end == digits ? at : end;
}

/// `5`, `5.5`, `.5`, `5e3` from `begin` to `end`, known to be one.
std::variant<double, ReadError> decimal(const PlainText& text, std::size_t begin, std::size_t end) {
  double value = 0.0;
  const char* first = text.plain.data() + begin;
  const auto result = std::from_chars(first, text.plain.data() + end, value);
  if (result.ec == std::errc() && std::isfinite(value)) return value;
  return read_error(text, begin, "the number is too large or too small to work with");
}

std::variant<Number, ReadError> scan_decimal(const PlainText& text, std::size_t begin, std::size_t end) {
  const std::string& plain = text.plain;
  const bool point =
      std::find(plain.begin() + static_cast<std::ptrdiff_t>(begin), plain.begin() + static_cast<std::ptrdiff_t>(end),
                '.') != plain.begin() + static_cast<std::ptrdiff_t>(end);
  const std::size_t after = end_of_exponent(plain, end);
  if (after + 1 < plain.size() && plain[after] == ',' && is_digit(plain[after + 1])) {
    return read_error(text, after, "a comma is not read in a number; write 1000 or 5.5");
  }
  const bool whole = !point && after == end;
  if (!whole && ((after < plain.size() && plain[after] == '/') || begin_of_mixed_fraction(plain, after))) {
    return read_error(text, after, "a decimal point and a fraction do not go together; write 5.5 or 5-1/2");
  }
  const auto value = decimal(text, begin, after);
  if (const auto* error = std::get_if<ReadError>(&value)) return *error;
  return Number{std::get<double>(value), whole, after};
}

std::variant<Number, ReadError> scan_unsigned(const PlainText& text, std::size_t begin, std::string_view grammar) {
  const std::string& plain = text.plain;
  std::size_t end = end_of_digits(plain, begin);
  const bool has_whole = end > begin;
  if (has_whole && end < plain.size() && plain[end] == '/') {
    const auto fraction = scan_fraction(text, begin, end);
    if (const auto* error = std::get_if<ReadError>(&fraction)) return *error;
    return Number{std::get<Fraction>(fraction).value, false, std::get<Fraction>(fraction).end};
  }
  if (end < plain.size() && plain[end] == '.') end = end_of_digits(plain, end + 1);
  if (!has_whole && end <= begin + 1) {
    return read_error(text, begin, fmt::format("does not begin with a number; {}", grammar));
  }
  auto number = scan_decimal(text, begin, end);
  auto* value = std::get_if<Number>(&number);
  if (value == nullptr || !value->whole) return number;
  const auto mixed = begin_of_mixed_fraction(plain, end);
  if (!mixed) return number;
  const auto fraction = scan_fraction(text, *mixed, *slash_of_fraction(plain, *mixed));
  if (const auto* error = std::get_if<ReadError>(&fraction)) return *error;
  const auto& part = std::get<Fraction>(fraction);
  if (!part.proper) {
    return read_error(text, *mixed, "after a whole number the fraction must lie between 0 and 1, like 5-1/2");
  }
  return Number{value->value + part.value, false, part.end};
}

}  // namespace

std::string_view PlainText::written_for(std::size_t from, std::size_t to) const {
  if (from >= to || from >= plain.size()) return {};
  const std::size_t begin = places[from];
  return written.substr(begin, places[std::min(to, plain.size())] - begin);
}

PlainText plain_text(const Written& from) {
  const std::string_view written = from.text;
  PlainText text{written, {}, {}, from.units, from.settled_by};
  text.plain.reserve(written.size());
  text.places.reserve(written.size() + 1);
  for (std::size_t at = 0; at < written.size();) {
    const char c = written[at];
    if (c > ' ' && c < 0x7f) {  // by far the most
      text.plain += c;
      text.places.push_back(at++);
      continue;
    }
    const std::string_view rest = written.substr(at);
    const std::size_t length = utf8_length(rest);
    const std::string plain = length == 0 ? std::string(1, PlainText::kUnreadable)
                                          : spelled_out(rest.substr(0, length), text.plain, rest.substr(length));
    const bool leading_space = plain == " " && text.plain.empty();
    if (!leading_space) {
      text.plain += plain;
      text.places.insert(text.places.end(), plain.size(), at);
    }
    at += std::max<std::size_t>(length, 1);
  }
  text.places.push_back(written.size());
  while (!text.plain.empty() && text.plain.back() == ' ') {
    text.plain.pop_back();
    text.places.pop_back();
  }
  return text;
}

std::string quoted(std::string_view text) {
  constexpr std::size_t kMostCharacters = 40;
  std::string result = "'";
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) {
    if (count == kMostCharacters) {
      result += "...";
      break;
    }
    const std::size_t length = utf8_length(text.substr(at));
    const char c = text[at];
    const bool printable = length > 1 || (length == 1 && c >= ' ' && c != 0x7f);
    result += printable ? text.substr(at, length) : std::string_view("?");
    at += std::max<std::size_t>(length, 1);
  }
  return result + "'";
}

ReadError read_error(const PlainText& text, std::size_t at, const std::string& problem, std::string_view code) {
  return {quoted(text.written) + ": " + problem, text.places[std::min(at, text.plain.size())], code};
}

std::variant<Number, ReadError> scan_number(const PlainText& text, std::size_t begin, std::string_view grammar) {
  const bool has_sign = begin < text.plain.size() && (text.plain[begin] == '-' || text.plain[begin] == '+');
  const bool negative = has_sign && text.plain[begin] == '-';
  auto number = scan_unsigned(text, has_sign ? begin + 1 : begin, grammar);
  if (auto* error = std::get_if<ReadError>(&number)) error->code = mistake::kNotANumber;
  auto* value = std::get_if<Number>(&number);
  if (value == nullptr || !negative) return number;
  if (value->value == 0.0) return read_error(text, begin, "zero has no sign; write 0", mistake::kNotANumber);
  value->value = -value->value;
  return number;
}

}  // namespace riserun::quantity
