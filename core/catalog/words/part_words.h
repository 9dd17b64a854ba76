// The words that a part can be asked for by, and what a text asks for.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/called_names.h"
#include "catalog/words/port_notation.h"
#include "catalog/words/words.h"

#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace riserun::catalog {

using WordSet = std::set<std::string, std::less<>>;

/// Whether the text holds the word, in capitals or not, if only within another: asked of thousands of names, so letter
/// by letter.
/// @param word  in lower case
bool says(std::string_view text, std::string_view word);

/// `x`, `by`, `in` ...: words that say nothing.
bool is_idle_word(std::string_view word);
/// Words of the text that say something, without plural; its sizes are none.
WordSet words_of(std::string_view text);
std::vector<std::string> sizes_of(std::string_view text);

/// What is asked for: words, sizes, and ports.
struct PartQuery {
  std::vector<Token> words;  // without plural
  std::vector<std::string> sizes;
  std::vector<PortTypeId> ports;
  bool in_inches = false;  // behind a size stands `in`: `3 in nipple`

  void take(Token token);
};

PartQuery plain_query(std::string_view text);
/// The same words with what reads as a port taken for one.
PartQuery query_with_ports(const PortNotation& notation, std::string_view text);

/// The words of all families, materials and ports, looked up once. The catalog must outlive it. For one thread.
class PartWords {
 public:
  explicit PartWords(const Catalog& catalog);

  /// Takes the numbers that some family is named by from the sizes to the words.
  void tell_numbers_from_sizes(PartQuery& query) const;

  const WordSet& family(FamilyId id) const { return families_[id.row].all; }
  const WordSet& material(MaterialId id) const { return materials_[id.row]; }
  const WordSet& port(PortTypeId id);

  /// Whether the words without those of the material are one of the family's names.
  bool is_whole_name(const PartQuery& query, FamilyId family, MaterialId material) const;
  /// Whether the family's parts are called so: `union` is the last word of `PVC union`.
  bool is_called(const PartQuery& query, FamilyId family, MaterialId material) const;

  /// The parts whose printed name, with their material behind it or without, is that text; in part order.
  std::vector<PartId> printed_as(std::string_view text);
  bool knows(const std::string& word);
  /// Every word that can be said, sorted.
  const std::vector<std::string>& all_words();

 private:
  struct Names {
    std::vector<WordSet> names;
    std::vector<WordList> called;
    WordSet all;
  };

  void add_name(const std::string& name, std::vector<WordSet>& names);
  WordSet words_of_port(const PortType& type) const;
  /// @param asked with one blank between its words
  std::vector<std::string> names_of(const Part& part) const;
  std::vector<PartId> printed_as_among_all(const std::string& asked) const;

  const Catalog& catalog_;
  std::vector<Names> families_;
  WordSet numbers_;
  std::vector<WordSet> materials_;
  std::map<std::uint32_t, WordSet> ports_;  // by port type, each made when first asked for
  int names_asked_ = 0;
  std::unordered_map<std::string, std::vector<PartId>> printed_;  // filled when many are asked for
  std::vector<std::string> all_words_;                            // filled when first asked for
};

}  // namespace riserun::catalog
