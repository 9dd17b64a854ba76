#include "catalog/words/part_words.h"

#include <algorithm>
#include <utility>

namespace riserun::catalog {

namespace {

constexpr std::size_t kLongestPort = 5;  // words of a port within the words of a part
constexpr std::string_view kIdleWords[] = {"x",   "by",   "to",  "in", "inch", "inches", "of",
                                           "and", "with", "the", "a",  "ft",   "long"};

void add_words(std::string_view text, WordSet& words) {
  for (const Token& token : split_words(text))
    if (!token.is_size && (token.text == "a" || !is_idle_word(token.text))) words.insert(without_plural(token.text));
}

/// Numbers in a name that are no sizes: the degrees of an elbow, the schedule of a pipe.
void add_numbers(const Catalog& catalog, std::string_view text, WordSet& numbers) {
  for (const Token& token : split_words(text))
    if (token.is_size && !catalog.a_part_has_size(token.text)) numbers.insert(token.text);
}

/// However it is spaced and whatever signs stand between.
std::string in_one_way(std::string_view text) {
  std::string result;
  for (const Token& token : split_words(text)) result += (result.empty() ? "" : " ") + token.text;
  return result;
}

/// The rows of letters in a text of lower case, the longest first: the fewest names have it.
std::vector<std::string_view> rows_of_letters(std::string_view text) {
  std::vector<std::string_view> rows;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() && text[end] >= 'a' && text[end] <= 'z') ++end;
    if (end > at) rows.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  std::sort(rows.begin(), rows.end(), [](std::string_view a, std::string_view b) { return a.size() > b.size(); });
  return rows;
}

}  // namespace

bool says(std::string_view text, std::string_view word) {
  const auto same = [](char a, char b) { return (a >= 'A' && a <= 'Z' ? static_cast<char>(a | 0x20) : a) == b; };
  if (word.empty()) return true;
  for (std::size_t at = 0; at + word.size() <= text.size(); ++at) {
    if (!same(text[at], word.front())) continue;
    std::size_t length = 1;
    while (length < word.size() && same(text[at + length], word[length])) ++length;
    if (length == word.size()) return true;
  }
  return false;
}

bool is_idle_word(std::string_view word) {
  return std::find(std::begin(kIdleWords), std::end(kIdleWords), word) != std::end(kIdleWords);
}

WordSet words_of(std::string_view text) {
  WordSet words;
  add_words(text, words);
  return words;
}

std::vector<std::string> sizes_of(std::string_view text) {
  std::vector<std::string> sizes;
  for (const Token& token : split_words(text))
    if (token.is_size) sizes.push_back(token.text);
  return sizes;
}

void PartQuery::take(Token token) {
  if (token.is_size) {
    sizes.push_back(token.text);
  } else if (!is_idle_word(token.text) || (token.text == "a" && token.offset > 0)) {  // `a union`, but `camlock A`
    token.text = without_plural(token.text);
    words.push_back(std::move(token));
  }
}

PartQuery plain_query(std::string_view text) {
  constexpr std::string_view kInch[] = {"in", "inch", "inches"};
  PartQuery query;
  std::vector<Token> tokens = split_words(text);
  for (std::size_t at = 0; at + 1 < tokens.size(); ++at)
    query.in_inches = query.in_inches || (tokens[at].is_size && std::find(std::begin(kInch), std::end(kInch),
                                                                          tokens[at + 1].text) != std::end(kInch));
  for (Token& token : tokens) query.take(std::move(token));
  return query;
}

namespace {

/// `3/4 FNPT x 3/4 FNPT` has two, each said for itself.
bool is_of_two_ports(const std::vector<Token>& tokens, std::size_t at, std::size_t count) {
  const auto begin = tokens.begin() + static_cast<std::ptrdiff_t>(at);
  return std::any_of(begin, begin + static_cast<std::ptrdiff_t>(count),
                     [](const Token& token) { return token.text == "x" || token.text == "by"; });
}

}  // namespace

PartQuery query_with_ports(const PortNotation& notation, std::string_view text) {
  PartQuery query;
  const std::vector<Token> tokens = split_words(text);
  for (std::size_t at = 0; at < tokens.size();) {
    std::size_t used = 0;
    for (std::size_t count = std::min(kLongestPort, tokens.size() - at); count >= 2 && used == 0; --count) {
      const Token& last = tokens[at + count - 1];
      if (is_idle_word(tokens[at].text) || is_idle_word(last.text) || is_of_two_ports(tokens, at, count)) continue;
      const auto port = notation.find(text.substr(tokens[at].offset, last.offset + last.length - tokens[at].offset));
      if (port) {
        query.ports.push_back(*port);
        used = count;
      }
    }
    if (used > 0) {
      at += used;
      continue;
    }
    query.take(tokens[at++]);
  }
  return query;
}

PartWords::PartWords(const Catalog& catalog) : catalog_(catalog) {
  for (const Family& family : catalog.families()) {
    Names names;
    add_name(family.name, names.names);
    for (const std::string& alias : family.aliases) add_name(alias, names.names);
    for (const WordSet& name : names.names) names.all.insert(name.begin(), name.end());
    names.called = called_by(family.name);
    families_.push_back(std::move(names));
  }
  for (const Material& material : catalog.materials()) {
    WordSet words = words_of(material.name);
    add_words(material.id, words);
    for (const std::string& alias : material.aliases) add_words(alias, words);
    add_words(material.sort, words);
    materials_.push_back(std::move(words));
  }
}

void PartWords::tell_numbers_from_sizes(PartQuery& query) const {
  std::erase_if(query.sizes, [&](const std::string& size) {
    const bool number = numbers_.contains(size);
    if (number) query.words.push_back({size, 0, 0, false});
    return number;
  });
}

bool PartWords::is_whole_name(const PartQuery& query, FamilyId family, MaterialId material) const {
  for (const WordSet& name : families_[family.row].names) {
    WordSet said;
    for (const Token& word : query.words)
      if (name.contains(word.text) || !materials_[material.row].contains(word.text)) said.insert(word.text);
    if (said == name) return true;
  }
  return false;
}

bool PartWords::is_called(const PartQuery& query, FamilyId family, MaterialId material) const {
  const auto is = [&](const WordList& name) {
    WordList said;
    for (const Token& word : query.words)
      if (std::find(name.begin(), name.end(), word.text) != name.end() || !materials_[material.row].contains(word.text))
        said.push_back(word.text);
    return ends_in(name, said);
  };
  const std::vector<WordList>& called = families_[family.row].called;
  return is_whole_name(query, family, material) || std::any_of(called.begin(), called.end(), is);
}

const WordSet& PartWords::port(PortTypeId id) {
  const auto [found, is_new] = ports_.try_emplace(id.row);
  if (is_new) found->second = words_of_port(catalog_.port_type(id));
  return found->second;
}

/// As lists print it: alone, with its material, and what a cut is made of without how that is sold.
std::vector<std::string> PartWords::names_of(const Part& part) const {
  const std::string& material = catalog_.material(part.material).name;
  std::vector<std::string> names = {part.name, part.name + " " + material};
  if (!part.sold_as.empty()) names.push_back(stock_name(part) + " " + material);
  return names;
}

std::vector<PartId> PartWords::printed_as(std::string_view text) {
  const std::string asked = in_one_way(text);
  // Splitting four thousand names into words takes longer than all else that is asked of a command: worth it for a
  // long bin, not for a few needs.
  constexpr int kFew = 60;
  if (++names_asked_ <= kFew) return printed_as_among_all(asked);
  if (printed_.empty())
    for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
      const Part& part = catalog_.part(PartId{row});
      for (const std::string& printed : names_of(part)) printed_[in_one_way(printed)].push_back({row});
    }
  const auto found = printed_.find(asked);
  return found == printed_.end() ? std::vector<PartId>{} : found->second;
}

std::vector<PartId> PartWords::printed_as_among_all(const std::string& asked) const {
  const std::vector<std::string_view> words = rows_of_letters(asked);
  std::vector<PartId> parts;
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    const Part& part = catalog_.part(PartId{row});
    const std::string& material = catalog_.material(part.material).name;
    const auto has = [&](std::string_view word) { return says(part.name, word) || says(material, word); };
    if (!std::all_of(words.begin(), words.end(), has)) continue;
    const std::vector<std::string> names = names_of(part);
    if (std::any_of(names.begin(), names.end(), [&](const std::string& name) { return in_one_way(name) == asked; }))
      parts.push_back({row});
  }
  return parts;
}

// Most words are of a family or a material: the ports, which take far longer to gather, need not be asked.
bool PartWords::knows(const std::string& word) {
  const auto has_it = [&](const auto& of) { return of.contains(word); };
  if (std::any_of(families_.begin(), families_.end(), [&](const Names& names) { return has_it(names.all); }) ||
      std::any_of(materials_.begin(), materials_.end(), has_it))
    return true;
  const std::vector<std::string>& all = all_words();
  return std::binary_search(all.begin(), all.end(), word);
}

const std::vector<std::string>& PartWords::all_words() {
  if (!all_words_.empty()) return all_words_;
  WordSet all;
  for (const Names& names : families_) all.insert(names.all.begin(), names.all.end());
  for (const WordSet& words : materials_) all.insert(words.begin(), words.end());
  std::set<PortTypeId> types;
  for (const Part& part : catalog_.parts())
    for (const Port& one : part.ports) types.insert(one.type);
  for (const PortTypeId type : types) {
    const WordSet& words = port(type);
    all.insert(words.begin(), words.end());
  }
  all_words_.assign(all.begin(), all.end());
  return all_words_;
}

// A name may be said with its numbers or without.
void PartWords::add_name(const std::string& name, std::vector<WordSet>& names) {
  names.push_back(words_of(name));
  WordSet numbers;
  add_numbers(catalog_, name, numbers);
  if (numbers.empty()) return;
  numbers_.insert(numbers.begin(), numbers.end());
  names.push_back(names.back());
  names.back().merge(numbers);
}

WordSet PartWords::words_of_port(const PortType& type) const {
  const JointKind& kind = catalog_.kind(type.kind);
  WordSet words = words_of(kind.name);
  add_words(kind.id, words);
  add_words(catalog_.notation(type.kind, type.end), words);
  for (const std::string& word : kind.kind_words) add_words(word, words);
  const std::vector<std::string>& own = type.end == End::male     ? kind.male_words
                                        : type.end == End::female ? kind.female_words
                                                                  : kind.neither_words;
  for (const std::string& word : own) add_words(word, words);
  if (type.end != End::neither) words.insert(type.end == End::male ? "male" : "female");
  return words;
}

}  // namespace riserun::catalog
