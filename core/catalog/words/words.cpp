#include "catalog/words/words.h"

#include "quantity/read.h"

#include <algorithm>
#include <cctype>
#include <cstdint>

namespace riserun::catalog {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_'; }

/// `½`, `¼` ... in UTF-8: how many bytes stand for one at this place; 0: none does.
std::size_t fraction_sign(std::string_view text) {
  if (text.starts_with("\xC2\xBC") || text.starts_with("\xC2\xBD") || text.starts_with("\xC2\xBE")) return 2;
  const bool eighths = text.starts_with("\xE2\x85") && text.size() > 2 && static_cast<unsigned char>(text[2]) >= 0x90 &&
                       static_cast<unsigned char>(text[2]) <= 0x9E;
  return eighths ? 3 : 0;
}

std::size_t digits(std::string_view text) {
  const auto end = std::find_if_not(text.begin(), text.end(), is_digit);
  return static_cast<std::size_t>(end - text.begin());
}

/// Bytes of `3/4` at the begin of the text; 0: no fraction.
std::size_t fraction(std::string_view text) {
  const std::size_t above = digits(text);
  if (above == 0 || text.substr(above, 1) != "/") return 0;
  const std::size_t below = digits(text.substr(above + 1));
  return below == 0 ? 0 : above + 1 + below;
}

/// Bytes of a fraction with one of its two numbers missing, as `/2` or `3/`, where a word begins; 0: none is there.
std::size_t broken_fraction(std::string_view text) {
  const std::size_t above = digits(text);
  if (text.substr(above, 1) != "/") return 0;
  const std::size_t below = digits(text.substr(above + 1));
  const bool ends = above + 1 + below == text.size() || text[above + 1 + below] == ' ';
  return (above == 0) != (below == 0) && ends ? above + 1 + below : 0;
}

/// Bytes of a number at the begin of the text: `1`, `1.25`, `.5`, `3/4`, `1-1/4`, `1 1/4`, `1¼`.
std::size_t number(std::string_view text) {
  if (const std::size_t length = fraction(text)) return length;
  if (const std::size_t sign = fraction_sign(text)) return sign;
  const std::size_t whole = digits(text);
  const std::string_view rest = text.substr(whole);
  if (rest.starts_with('.') && digits(rest.substr(1)) > 0) return whole + 1 + digits(rest.substr(1));
  if (whole == 0) return 0;
  if (const std::size_t sign = fraction_sign(rest)) return whole + sign;
  if (rest.starts_with('-') || rest.starts_with(' ')) {
    const std::size_t blanks = rest.find_first_not_of(' ', 1);
    if (blanks != std::string_view::npos)
      if (const std::size_t more = fraction(rest.substr(blanks))) return whole + blanks + more;
  }
  return whole;
}

std::string size_name(std::string_view text) {
  quantity::Reading<std::string> reading = quantity::read_size_name(text);
  if (std::string* name = std::get_if<std::string>(&reading)) return std::move(*name);
  return std::string(text);
}

/// `DN 20` and its length when the text begins with one.
std::size_t metric_size(std::string_view text) {
  if (lower_case(text.substr(0, 2)) != "dn") return 0;
  const std::size_t begin = text.find_first_not_of(' ', 2);
  if (begin == std::string_view::npos) return 0;
  const std::size_t count = digits(text.substr(begin));
  return count == 0 ? 0 : begin + count;
}

/// A dash size, `-8` for eight sixteenths of an inch, and its length when the text begins with one.
std::size_t dash_size(std::string_view text) {
  if (!text.starts_with('-')) return 0;
  const std::size_t count = digits(text.substr(1));
  const std::string_view rest = text.substr(1 + count);
  const bool is_fraction = rest.starts_with('/') || rest.starts_with('.') || rest.starts_with('-');
  return count == 0 || is_fraction ? 0 : 1 + count;
}

}  // namespace

std::string lower_case(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

std::vector<Token> split_words(std::string_view text) {
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < text.size();) {
    const std::string_view rest = text.substr(at);
    const bool begins_word = tokens.empty() || tokens.back().offset + tokens.back().length < at;
    std::size_t length = begins_word ? std::max({metric_size(rest), dash_size(rest), broken_fraction(rest)}) : 0;
    if (length == 0) length = number(rest);
    if (length > 0) {
      tokens.push_back({size_name(rest.substr(0, length)), at, length, true});
    } else if (is_letter(rest[0]) || (static_cast<unsigned char>(rest[0]) >= 0xC3 && rest.size() > 1)) {
      const auto ends = [](char c) { return !is_letter(c) && static_cast<unsigned char>(c) < 0x80; };
      length = static_cast<std::size_t>(std::find_if(rest.begin(), rest.end(), ends) - rest.begin());
      const std::string word = lower_case(rest.substr(0, length));
      // Typographic quotes are no part of a word.
      if (word.find("\xE2\x80") == std::string::npos) tokens.push_back({word, at, length, false});
    } else {
      length = 1;
    }
    at += length;
  }
  return tokens;
}

std::string without_plural(std::string_view word) {
  for (const std::string_view ending : {"shes", "ches", "sses", "xes"})
    if (word.ends_with(ending)) return std::string(word.substr(0, word.size() - 2));
  if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss") && !word.ends_with("us"))
    return std::string(word.substr(0, word.size() - 1));
  return std::string(word);
}

}  // namespace riserun::catalog
