#include "catalog/words/counted_words.h"

#include "catalog/words/words.h"

#include <algorithm>
#include <vector>

namespace riserun::catalog {

namespace {

bool is_count(const Token& token) {
  return token.is_size && token.text.size() <= 2 && token.text != "1" &&
         token.text.find_first_not_of("0123456789") == std::string::npos;
}

/// `2 ball valves`, `unions x2`: what is left of the words without the number, which may be a count. A number that only
/// inches can be is none: `2 in ball valves`.
std::optional<std::string> without_count(std::string_view words, const std::vector<Token>& tokens) {
  if (tokens.size() < 2) return std::nullopt;
  const Token& first = tokens.front();
  const Token& last = tokens.back();
  const bool many = !last.is_size && without_plural(last.text) != last.text;
  const bool more_sizes = std::any_of(tokens.begin() + 1, tokens.end(), [](const Token& t) { return t.is_size; });
  const bool in_inches =
      tokens[1].text == "in" || tokens[1].text == "inch" || words.find('"') != std::string_view::npos;
  if (many && is_count(first) && !more_sizes && !in_inches)
    return std::string(words.substr(tokens[1].offset, last.offset + last.length - tokens[1].offset));
  const Token& sign = tokens[tokens.size() - 2];
  const bool times =
      tokens.size() > 2 && (sign.text == "x" || sign.text == "times") && !tokens[tokens.size() - 3].is_size;
  if (times && is_count(last)) return std::string(words.substr(0, sign.offset));
  const bool times_first = tokens.size() > 2 && is_count(first) && tokens[1].text == "x" && !tokens[2].is_size;
  if (times_first) return std::string(words.substr(tokens[2].offset));
  return std::nullopt;
}

}  // namespace

std::optional<CountedWords> counted_in(std::string_view words) {
  const std::vector<Token> tokens = split_words(words);
  std::optional<std::string> rest = without_count(words, tokens);
  if (!rest) return std::nullopt;
  while (rest->ends_with(' ')) rest->pop_back();
  CountedWords counted{is_count(tokens.front()) ? tokens.front().text : tokens.back().text, *rest, *rest};
  const std::vector<Token> named = split_words(*rest);
  if (!named.empty() && !named.back().is_size) {
    const Token& last = named.back();
    counted.one = rest->substr(0, last.offset) + without_plural(rest->substr(last.offset, last.length));
  }
  return counted;
}

}  // namespace riserun::catalog
