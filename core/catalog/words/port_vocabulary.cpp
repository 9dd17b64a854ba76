#include "catalog/words/port_vocabulary.h"

#include "catalog/yaml/nearest_name.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

constexpr std::string_view kMaleWords[] = {"male", "m", "external"};
constexpr std::string_view kFemaleWords[] = {"female", "fem", "f", "internal"};

bool one_of(std::string_view word, std::span<const std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

std::optional<End> end_of_word(std::string_view word) {
  if (one_of(word, kMaleWords)) return End::male;
  if (one_of(word, kFemaleWords)) return End::female;
  if (word == "neither") return End::neither;
  return std::nullopt;
}

namespace detail {

PortVocabulary::PortVocabulary(const Catalog& catalog) : catalog_(catalog) {
  for (std::uint32_t row = 0; row < catalog.kinds().size(); ++row) {
    const KindId id{row};
    const JointKind& kind = catalog.kind(id);
    const KindEnds all = ends_of(id);
    add(kind.id, all, {});
    add(kind.name, all, {});
    for (const std::string& words : kind.kind_words) add(words, all, {});
    add_end(id, End::male, kind.male_notation, kind.male_words);
    add_end(id, End::female, kind.female_notation, kind.female_words);
    add_end(id, End::neither, kind.neither_notation, kind.neither_words);
    for (const KindEnd& one : all) {
      printed_ends_.push_back({" " + lower_case(catalog.notation(id, one.end)), one});
      printed_ends_.push_back({" " + kind.id + " " + std::string(end_name(one.end)), one});
    }
  }
  words_ = {"male", "female"};
  for (const Phrase& phrase : phrases_)
    for (const Token& token : phrase.words)
      if (!token.is_size) words_.push_back(token.text);
  std::sort(words_.begin(), words_.end());
  words_.erase(std::unique(words_.begin(), words_.end()), words_.end());
}

KindEnds PortVocabulary::ends_of(KindId kind) const {
  KindEnds ends;
  for (const End end : {End::male, End::female, End::neither})
    if (!catalog_.notation(kind, end).empty()) ends.insert({kind, end});
  return ends;
}

const Phrase* PortVocabulary::longest_at(std::span<const Token> tokens) const {
  const Phrase* longest = nullptr;
  for (const Phrase& phrase : phrases_) {
    if (longest != nullptr && phrase.words.size() <= longest->words.size()) continue;
    if (phrase.words.size() > tokens.size()) continue;
    const auto same = [](const Token& a, const Token& b) { return a.text == b.text; };
    if (std::equal(phrase.words.begin(), phrase.words.end(), tokens.begin(), same)) longest = &phrase;
  }
  return longest;
}

std::optional<KindEnds> PortVocabulary::with_end_letter(const Token& token) const {
  if (token.is_size || token.text.size() < 3) return std::nullopt;
  const std::optional<End> end = end_of_word(token.text.substr(0, 1));
  if (!end) return std::nullopt;
  const Token word{token.text.substr(1), token.offset + 1, token.length - 1, false};
  const Phrase* phrase = longest_at(std::span(&word, 1));
  if (phrase == nullptr) return std::nullopt;
  KindEnds result;
  for (const KindEnd& one : phrase->means)
    if (one.end == *end) result.insert(one);
  return result.empty() ? std::nullopt : std::optional(result);
}

std::vector<std::string> PortVocabulary::close_to(std::string_view word) const {
  std::set<std::pair<std::size_t, std::string>> near;
  const auto look = [&](std::string_view known) {
    const std::size_t distance = edit_distance(word, known);
    if (distance <= std::max<std::size_t>(1, std::max(word.size(), known.size()) / 3) && distance < known.size())
      near.emplace(distance, known);
  };
  for (const auto& [text, shown] : shown_) look(shown);
  for (const std::string_view known : {"male", "female"}) look(known);
  std::vector<std::string> result;
  for (const auto& [distance, text] : near)
    if (result.size() < 4) result.push_back(text);
  return result;
}

void PortVocabulary::add(std::string_view words, const KindEnds& means, const KindEnds& usually) {
  std::vector<Token> tokens = split_words(words);
  if (tokens.empty() || means.empty()) return;
  shown_.emplace(lower_case(words), words);
  const auto same_words = [&](const Phrase& phrase) {
    const auto same = [](const Token& a, const Token& b) { return a.text == b.text; };
    return std::equal(phrase.words.begin(), phrase.words.end(), tokens.begin(), tokens.end(), same);
  };
  const auto known = std::find_if(phrases_.begin(), phrases_.end(), same_words);
  if (known == phrases_.end()) {
    phrases_.push_back({std::move(tokens), means, usually});
  } else {
    known->means.insert(means.begin(), means.end());
    known->usually.insert(usually.begin(), usually.end());
  }
}

void PortVocabulary::add_end(KindId kind, End end, std::string_view notation, std::span<const std::string> words) {
  if (notation.empty()) return;
  add(notation, {{kind, end}}, {{kind, end}});
  for (const std::string& word : words) add(word, {{kind, end}}, {{kind, end}});
}

}  // namespace detail

}  // namespace riserun::catalog
