#include "catalog/words/called_names.h"

#include "catalog/words/words.h"

#include <algorithm>

namespace riserun::catalog {

WordList words_in_turn(std::string_view text) {
  WordList words;
  for (const Token& token : split_words(text)) words.push_back(token.is_size ? token.text : without_plural(token.text));
  return words;
}

std::vector<WordList> called_by(const std::string& name) {
  const WordList whole = words_in_turn(name);
  const auto joins_to = std::find(whole.begin(), whole.end(), "to");
  if (joins_to == whole.end()) return {whole};
  std::vector<WordList> names{{whole.begin(), joins_to}};
  if (whole.back() == "adapter") names.push_back(whole);
  return names;
}

bool ends_in(const WordList& name, const WordList& words) {
  return !words.empty() && words.size() <= name.size() &&
         std::equal(words.begin(), words.end(), name.end() - static_cast<std::ptrdiff_t>(words.size()));
}

}  // namespace riserun::catalog
