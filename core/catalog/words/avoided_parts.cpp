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
    for (std::string& word : words_in_turn(material.sort)) words.push_back(std::move(word));
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
    if (is_family(part.family, asked_)) return true;
    WordList without_material = asked_;
    std::erase_if(without_material,
                  [&](const std::string& word) { return materials_[part.material.row].contains(word); });
    return without_material.size() < asked_.size() && is_family(part.family, without_material);
  }

  /// Kinds of joint that the words name. A kind with the very name of what it joins (hose) is not meant by it.
  std::vector<KindId> kinds() const {
    std::vector<KindId> named;
    for (std::uint32_t row = 0; row < catalog_.kinds().size(); ++row) {
      const JointKind& kind = catalog_.kind({row});
      const WordList name = words_in_turn(kind.name.substr(0, kind.name.find(" in ")));  // NPT in plastic is NPT
      const bool by_name = name == asked_ && !is_a_thing();
      if (by_name || std::any_of(kind.kind_words.begin(), kind.kind_words.end(),
                                 [&](const std::string& words) { return words_in_turn(words) == asked_; }))
        named.push_back({row});
    }
    return named;
  }

 private:
  bool is_family(FamilyId family, const WordList& words) const {
    return std::any_of(names_[family.row].begin(), names_[family.row].end(),
                       [&](const WordList& name) { return ends_in(name, words) && !is_half(name, words); });
  }
  /// A half union joins a pipe and nothing that comes apart: whoever keeps unions out does not mean it.
  static bool is_half(const WordList& name, const WordList& words) {
    return name.size() > words.size() && name[name.size() - words.size() - 1] == "half";
  }
  bool is_a_thing() const {
    for (std::uint32_t row = 0; row < names_.size(); ++row)
      if (is_family({row}, asked_)) return true;
    return false;
  }

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
  const std::vector<KindId> kinds = called.kinds();
  const auto is_of_kind = [&](const Port& port) {
    return std::find(kinds.begin(), kinds.end(), catalog.port_type(port.type).kind) != kinds.end();
  };
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Part& part = catalog.part({row});
    if (called.is(part) || std::any_of(part.ports.begin(), part.ports.end(), is_of_kind)) parts.push_back({row});
  }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

std::vector<PartId> find_avoided_parts(const Catalog& catalog, std::string_view words) {
  PartSearch search(catalog);
  return find_avoided_parts(search, words);
}

NotationError why_no_avoided_parts(PartSearch& search, std::string_view words) {
  const Catalog& catalog = search.catalog();
  const std::string_view meant = without_just(words);
  NotationError error = search.why_none(meant);
  error.offset += words.size() - meant.size();
  std::set<std::uint32_t> joined;
  for (const Part& part : catalog.parts())
    for (const Port& port : part.ports) joined.insert(catalog.port_type(port.type).kind.row);
  std::string kinds;
  for (const std::uint32_t row : joined) kinds += (kinds.empty() ? "" : ", ") + catalog.kind({row}).name;
  std::string materials;
  for (const Material& material : catalog.materials()) materials += (materials.empty() ? "" : ", ") + material.name;
  error.message += "; allowed: what a part is called ('nipple', 'brass hex nipple'), a material (" + materials +
                   ") or a kind of joint (" + kinds + ")";
  return error;
}

}  // namespace riserun::catalog
