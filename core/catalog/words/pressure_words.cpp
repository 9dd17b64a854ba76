#include "catalog/words/pressure_words.h"

#include "quantity/read.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <variant>

namespace riserun::catalog {

namespace {

constexpr std::array<std::string_view, 5> kPressureUnits = {"psi", "psig", "bar", "mbar", "kpa"};

bool is_space(char c) { return c == ' '; }
bool is_of_word(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }
bool is_of_number(char c) {
  return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.' || c == '/' || c == '-';
}

std::string small_letters(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return result;
}

/// Where a row of such characters that ends at `end` begins.
template <class Is>
std::size_t begin_of(std::string_view text, std::size_t end, Is is) {
  while (end > 0 && is(text[end - 1])) --end;
  return end;
}

/// Begin of "0 to " or "0 - " before `begin`; else `begin`.
std::size_t with_nought(std::string_view text, std::size_t begin) {
  const std::size_t gap = begin_of(text, begin, is_space);
  const std::size_t joiner = text.substr(0, gap).ends_with("to")  ? gap - 2
                             : text.substr(0, gap).ends_with("-") ? gap - 1
                                                                  : std::string_view::npos;
  if (joiner == std::string_view::npos) return begin;
  const std::size_t nought = begin_of(text, joiner, is_space);
  const bool alone = nought == 1 || (nought > 1 && is_space(text[nought - 2]));
  return nought > 0 && text[nought - 1] == '0' && alone ? nought - 1 : begin;
}

std::optional<PressureWords> read_at(std::string_view words, std::size_t unit, std::size_t unit_end) {
  const std::size_t number_end = begin_of(words, unit, is_space);
  std::size_t begin = begin_of(words, number_end, is_of_number);
  if (begin == number_end) return std::nullopt;
  std::string_view number = words.substr(begin, number_end - begin);
  const std::size_t whole = begin;
  if (number.starts_with("0-")) number.remove_prefix(2);  // 1-1/2 stays
  const auto read =
      quantity::read_pressure(std::string(number) + " " + std::string(words.substr(unit, unit_end - unit)));
  const auto* upto = std::get_if<quantity::GaugePressure>(&read);
  if (upto == nullptr) return std::nullopt;
  begin = with_nought(words, whole);
  std::string rest(words.substr(0, begin));
  rest += words.substr(unit_end);
  return PressureWords{*upto, std::move(rest), begin};
}

}  // namespace

std::optional<PressureWords> pressure_in(std::string_view words) {
  for (std::size_t at = 0; at < words.size();) {
    if (!is_of_word(words[at])) {
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < words.size() && is_of_word(words[end])) ++end;
    const std::string word = small_letters(words.substr(at, end - at));
    if (std::find(kPressureUnits.begin(), kPressureUnits.end(), word) != kPressureUnits.end())
      if (auto found = read_at(words, at, end)) return found;
    at = end;
  }
  return std::nullopt;
}

}  // namespace riserun::catalog
