// Which parts of the catalog fit what a text asks for best. For core/catalog/words alone.
#pragma once

#include "catalog/words/part_words.h"

#include <compare>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace riserun::catalog {

/// Whose names count as the whole of the words: `union` is a union alone, or a PVC union as well.
enum class Naming { whole, called };

/// Every part is looked at, in part order. For one thread; the catalog and its words must outlive it.
class PartFit {
 public:
  PartFit(const Catalog& catalog, PartWords& words, Naming naming)
      : catalog_(catalog), words_(words), naming_(naming) {}

  /// Every part that all the words fit, however well, in part order; a word may be one of a port or of the title.
  std::vector<PartId> all(PartQuery query);
  /// Parts of the best fit. With `port_words`, a word may also be one of a port or of the part's own title.
  std::vector<PartId> run(PartQuery query, bool port_words);
  /// Whether the last run that found anything found parts of that name.
  bool best_is_named() const { return best_fit_.named; }

 private:
  /// How well a part fits; more is better.
  struct Fit {
    bool named = false;
    bool whole_size = false;
    bool first_size = false;  // asked of needs: `3/4 hose bibb` has 3/4 pipe thread, and not hose thread alone
    auto operator<=>(const Fit&) const = default;
  };

  std::optional<Fit> fit_of(const PartQuery& query, const Part& part, bool port_words);
  /// Which families and materials have each word among their own: asked once, not for every part.
  void tell_who_knows(const PartQuery& query);
  bool knows(const Part& part, std::size_t place, const std::string& word, bool port_words);
  static bool has_ports(const Part& part, std::vector<PortTypeId> wanted);
  /// The one size asked for is none of its ports', which are two, but how long it is: `3 in nipple`.
  bool is_as_long_as_said(const Part& part);
  bool begins_with(const Part& part, const std::string& size) const;
  /// Nothing: the part has not these sizes. True: they are all the sizes that it has.
  std::optional<bool> whole_size(const Part& part);
  /// Sorted. Many parts are of one size.
  const std::vector<std::string>& sizes_said_in(const std::string& size);

  const Catalog& catalog_;
  PartWords& words_;
  Naming naming_;
  std::vector<std::string> wanted_;  // sizes of the query, sorted
  std::unordered_map<std::string, std::vector<std::string>> said_;
  std::vector<std::vector<bool>> families_;  // by word of the query and row
  std::vector<std::vector<bool>> materials_;
  Fit best_fit_;
};

}  // namespace riserun::catalog
