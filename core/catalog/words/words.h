// Words and sizes as people write them in a port or in the name of a part. For core/catalog's own files only.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

/// A word (lower case) or a size (`1-1/4`; as quantity::read_size_name writes it, or as it stands if that does not read
/// it) and where in the text it was.
struct Token {
  std::string text;
  std::size_t offset = 0;
  std::size_t length = 0;
  bool is_size = false;
};

/// Splits at blanks and signs, and between letters and digits; `1 1/4` and `1-1/4` are one size, `DN 20` is 3/4, `-8`
/// where a word begins is 1/2. `/2` is a size that nothing has. Sizes are read as they are said, too: `three quarter`
/// is 3/4, `inch and a half` 1-1/2, `half inch` 1/2 (but `half coupling` has no size), `dash eight` 1/2.
std::vector<Token> split_words(std::string_view text);

/// How many slips make the one word of the other: letters put in, left out, changed, or two neighbours swapped.
std::size_t slips_between(std::string_view a, std::string_view b);

/// What a mistyped word was meant to be: the known words nearest to it, all that are as near; none where it is too
/// short to guess or too far from all.
std::vector<std::string> meant_by(std::string_view word, std::span<const std::string> known);

/// Without the ending of the plural: `couplings` and `coupling`, `bushes` and `bush` are alike.
std::string without_plural(std::string_view word);

std::string lower_case(std::string_view text);

}  // namespace riserun::catalog
