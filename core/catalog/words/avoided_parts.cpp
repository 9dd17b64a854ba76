#include "catalog/words/avoided_parts.h"

#include "catalog/words/called_names.h"
#include "catalog/words/words.h"

#include <algorithm>
#include <set>
#include <string>

namespace riserun::catalog {

namespace {

/// The words of each material, to be left out of those of a name.
std::vector<std::set<std::string>> words_of_materials(const Catalog& catalog) {
  std::vector<std::set<std::string>> all;
  for (const Material& material : catalog.materials()) {
    WordList words = words_in_turn(material.name);
    for (const std::string& alias : material.aliases)
      for (std::string& word : words_in_turn(alias)) words.push_back(std::move(word));
    all.emplace_back(words.begin(), words.end());
  }
  return all;
}

class Called {
 public:
  Called(const Catalog& catalog, std::string_view words)
      : catalog_(catalog), asked_(words_in_turn(words)), materials_(words_of_materials(catalog)) {
    for (const Family& family : catalog.families()) {
      std::vector<WordList>& names = names_.emplace_back(called_by(family.name));
      for (const std::string& alias : family.aliases)
        for (WordList& name : called_by(alias)) names.push_back(std::move(name));
    }
  }

  bool is(const Part& part) const {
    const auto any = [&](const WordList& words) {
      return std::any_of(names_[part.family.row].begin(), names_[part.family.row].end(),
                         [&](const WordList& name) { return ends_in(name, words); });
    };
    if (any(asked_)) return true;
    WordList without_material = asked_;
    std::erase_if(without_material,
                  [&](const std::string& word) { return materials_[part.material.row].contains(word); });
    return without_material.size() < asked_.size() && any(without_material);
  }

 private:
  const Catalog& catalog_;
  WordList asked_;
  std::vector<std::set<std::string>> materials_;
  std::vector<std::vector<WordList>> names_;  // by family
};

bool names_a_size(const Catalog& catalog, std::string_view words) {
  const std::vector<Token> tokens = split_words(words);
  return std::any_of(tokens.begin(), tokens.end(),
                     [&](const Token& token) { return token.is_size && catalog.a_part_has_size(token.text); });
}

}  // namespace

std::string_view without_just(std::string_view words) {
  const std::size_t start = words.find_first_not_of(' ');
  if (start == std::string_view::npos || lower_case(words.substr(start, 5)) != "just ") return words;
  return words.substr(start + 5);
}

std::vector<PartId> find_avoided_parts(PartSearch& search, std::string_view words) {
  const Catalog& catalog = search.catalog();
  const std::string_view meant = without_just(words);
  std::vector<PartId> parts = search.find(meant);
  if (parts.empty() || meant.size() != words.size() || catalog.find_part(words) || names_a_size(catalog, words))
    return parts;
  const Called called(catalog, search.corrected(words));
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
    if (called.is(catalog.part({row}))) parts.push_back({row});
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

std::vector<PartId> find_avoided_parts(const Catalog& catalog, std::string_view words) {
  PartSearch search(catalog);
  return find_avoided_parts(search, words);
}

}  // namespace riserun::catalog
