// The words by which a catalog's kinds of joint and their ends are called. For core/catalog's own files only.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/words.h"

#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::catalog {

struct KindEnd {
  KindId kind;
  End end = End::neither;
  auto operator<=>(const KindEnd&) const = default;
};
using KindEnds = std::set<KindEnd>;

/// Some words that stand for certain ends of certain kinds.
struct Phrase {
  std::vector<Token> words;
  KindEnds means;
  KindEnds usually;  // where one of the kind's ends has the words for its own: that end, unless another is said
};

/// `male`, `f` ...: the end that a word names.
std::optional<End> end_of_word(std::string_view word);

namespace detail {

/// What stands behind the size where the catalog writes or spells that end: in lower case, with the blank before it.
struct PrintedEnd {
  std::string words;
  KindEnd which;
};

class PortVocabulary {
 public:
  explicit PortVocabulary(const Catalog& catalog);

  KindEnds ends_of(KindId kind) const;
  /// In the order of the kinds.
  const std::vector<PrintedEnd>& printed_ends() const { return printed_ends_; }
  /// The longest phrase that stands at that place; nullptr: none does.
  const Phrase* longest_at(std::span<const Token> tokens) const;
  /// `mght`: an `m` or `f` before the word of a kind.
  std::optional<KindEnds> with_end_letter(const Token& token) const;
  /// Every single word of the phrases and of the ends.
  const std::vector<std::string>& words() const { return words_; }
  /// Words near to this one, nearest first.
  std::vector<std::string> close_to(std::string_view word) const;

 private:
  void add(std::string_view words, const KindEnds& means, const KindEnds& usually);
  void add_end(KindId kind, End end, std::string_view notation, std::span<const std::string> words);

  const Catalog& catalog_;
  std::vector<PrintedEnd> printed_ends_;
  std::vector<Phrase> phrases_;
  std::vector<std::string> words_;
  std::set<std::pair<std::string, std::string>> shown_;  // lower case, and as the catalog writes it
};

}  // namespace detail

}  // namespace riserun::catalog
