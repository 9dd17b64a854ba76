#include "catalog/yaml/text_checks.h"

#include "quantity/printable.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <string>

namespace riserun::catalog::detail {

namespace {

/// Digits of the number behind an escape's letter; 0: it has none.
std::size_t digits_of(char letter) { return letter == 'x' ? 2 : letter == 'u' ? 4 : letter == 'U' ? 8 : 0; }

/// Of YAML's escapes (YAML 1.2.2, section 5.7) those that stand for what may not be printed.
bool is_printable_escape(std::string_view behind_backslash) {
  constexpr std::string_view kControls = "0abt\tnvfreNLP";
  const char letter = behind_backslash.empty() ? ' ' : behind_backslash.front();
  if (kControls.find(letter) != std::string_view::npos) return false;
  const std::size_t digits = digits_of(letter);
  if (digits == 0) return true;
  const std::string_view number = behind_backslash.substr(1, digits);
  std::uint32_t code = 0;
  std::from_chars(number.data(), number.data() + number.size(), code, 16);
  return quantity::is_printable(static_cast<char32_t>(code));
}

}  // namespace

bool check_bytes(const DocumentData& data, Problems& problems) {
  const std::string_view text = data.text;
  for (std::size_t at = 0; at < text.size();) {
    const auto wrong = quantity::first_unprintable(text.substr(at));
    if (!wrong) return true;
    const std::size_t place = at + wrong->offset;
    at = place + wrong->length;
    if (wrong->utf8 && (text[place] == '\t' || text[place] == '\n' || text[place] == '\r')) continue;
    problems.add(
        data.problem_at(place, wrong->words() + (wrong->utf8 ? ": a text file holds letters, digits, signs and blanks"
                                                             : ": save the file as UTF-8")));
    return false;
  }
  return true;
}

std::size_t place_of_escape(std::string_view quoted) {
  if (!quoted.starts_with('"')) return 0;
  for (std::size_t at = 1; at < quoted.size() && quoted[at] != '"'; ++at) {
    if (quoted[at] != '\\') continue;
    if (!is_printable_escape(quoted.substr(at + 1))) return at;
    ++at;
  }
  return 0;
}

}  // namespace riserun::catalog::detail
