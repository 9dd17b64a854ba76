#include "catalog/words/pressure_words.h"

#include "quantity/read.h"

#include <algorithm>
#include <cctype>
#include <variant>
#include <vector>

namespace riserun::catalog {

namespace {

constexpr std::size_t kLongestUnit = 4;  // words: "inches of water column"

bool is_space(char c) { return c == ' '; }
bool begins_unit(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '"'; }
bool is_of_number(char c) {
  return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.' || c == '/' || c == '-';
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

/// Begin of what leads to a setting, "set", "set at", "opens at", before `begin`; else `begin`.
std::size_t with_lead(std::string_view text, std::size_t begin) {
  constexpr std::string_view kLeads[] = {"set", "set at", "set to", "opens at", "opening at"};
  const std::size_t gap = begin_of(text, begin, is_space);
  std::size_t longest = begin;
  for (const std::string_view lead : kLeads)
    if (text.substr(0, gap).ends_with(lead)) {
      const std::size_t at = gap - lead.size();
      if (at == 0 || is_space(text[at - 1])) longest = std::min(longest, at);
    }
  return longest;
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
  begin = with_lead(words, with_nought(words, whole));
  std::string rest(words.substr(0, begin));
  rest += words.substr(unit_end);
  return PressureWords{*upto, std::move(rest), begin};
}

/// Ends of the first words from `begin` on, without a comma or a bracket behind them, the farthest first.
std::vector<std::size_t> ends_of_words(std::string_view words, std::size_t begin) {
  std::vector<std::size_t> ends;
  for (std::size_t at = begin; at < words.size() && ends.size() < kLongestUnit;) {
    std::size_t end = std::min(words.find(' ', at), words.size());
    at = std::min(words.find_first_not_of(' ', end), words.size());
    while (end > begin && (words[end - 1] == ',' || words[end - 1] == ';' || words[end - 1] == ')')) --end;
    // "100 kPa gauge" may be a pressure and a gauge: the part is meant.
    if (!words.substr(begin, end - begin).ends_with("gauge")) ends.push_back(end);
  }
  std::reverse(ends.begin(), ends.end());
  return ends;
}

}  // namespace

std::optional<PressureWords> pressure_in(std::string_view words) {
  for (std::size_t at = 0; at < words.size(); ++at) {
    const bool begins_word = at == 0 || is_space(words[at - 1]) || is_of_number(words[at - 1]);
    if (!begins_word || !begins_unit(words[at])) continue;
    for (const std::size_t end : ends_of_words(words, at))
      if (auto found = read_at(words, at, end)) return found;
  }
  return std::nullopt;
}

}  // namespace riserun::catalog
