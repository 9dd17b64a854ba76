// From words to parts: `ball valve`, `1 x 4 nipple, galvanized`, `1/2 FNPT coupling brass`. Words are those of the
// family's name and aliases (singular or plural alike), of the material and of the ports; sizes are read as in a port.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/port_notation.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <variant>
#include <vector>

namespace riserun::catalog {

class PartWords;
struct PartQuery;

/// The parts that all the words fit, in part order; empty when there are none. A part id finds its part, and so does
/// its printed name, with the material behind it or, of all that are printed so, without. When the words are the whole
/// name of a family ("coupling"), families that merely contain them ("reducing coupling") do not count; when the sizes
/// are the whole size of some parts, parts that merely have those sizes among others do not count.
std::vector<PartId> find_parts(const Catalog& catalog, std::string_view words);

/// Why find_parts finds nothing: which word no part knows and what is close to it, or which sizes there are.
NotationError why_no_parts(const Catalog& catalog, std::string_view words);

/// The same for many words: what the catalog calls its families, materials and ports is gathered once. The catalog must
/// outlive it. For one thread.
class PartSearch {
 public:
  explicit PartSearch(const Catalog& catalog);
  ~PartSearch();
  const Catalog& catalog() const { return catalog_; }
  /// Other words are read from now on: descriptions that were looked up before do not count against kMostSought.
  void begin_anew();
  const PortNotation& ports();
  /// As find_parts; a mistyped word is taken for the one that it must be, where only one is near.
  std::vector<PartId> find(std::string_view words);
  /// What a need names: every part that is called so, `union` PVC unions too; first those of that very name. Of unlike
  /// ones the plainest are meant: `valve` is one that shuts, no check or relief valve, whose duty has a name of its
  /// own. A number that may count or measure (`2 ball valves`, `unions x2`) is an error that says how to write either.
  /// Words that name no thing but fit unlike ones (`0-30 psi`: a gauge, a regulator) are an error that names them.
  std::variant<std::vector<PartId>, NotationError> find_called(std::string_view words);
  /// What a look into the catalog names: as find_called, and where the words are no thing's name (`2 camlock`) every
  /// part that they fit, not those alone that have just these sizes.
  std::variant<std::vector<PartId>, NotationError> find_all(std::string_view words);
  /// What find_called has taken the words for, where they say it otherwise (`vlv`, `shutoff`): the families' names;
  /// empty: the words say one of them.
  std::vector<std::string> taken_for(std::string_view words, const std::vector<PartId>& parts);
  /// The words with each mistyped one changed for the only one that is near.
  std::string corrected(std::string_view words);
  NotationError why_none(std::string_view words);
  /// The one part that the words fit, those measured by hand left out if any other fits; an error when there is none,
  /// or several (it lists their ids). Of more than kMostSought different descriptions the rest is an error, too; ids
  /// and printed names do not count.
  std::variant<PartId, NotationError> find_one(std::string_view words);

 private:
  /// A description takes a millisecond or more; a bin of ten thousand lines has not as many different ones.
  static constexpr std::size_t kMostSought = 1000;

  const Catalog& catalog_;
  std::size_t sought_ = 0;                                                                  // descriptions looked up
  std::unordered_map<std::string, PartId, TextHash, std::equal_to<>> one_by_words_;         // what find_one found
  std::unordered_map<std::string, std::vector<PartId>, TextHash, std::equal_to<>> found_;   // by words, as a bin's
  std::unordered_map<std::string, std::vector<PartId>, TextHash, std::equal_to<>> called_;  // ... and as a need's
  std::unique_ptr<const PortNotation> ports_;  // made when first asked for, as is the next
  std::unique_ptr<PartWords> words_;

  PartWords& known_words();
  /// Of the same words it is looked up once: a job says `ball valve` many times.
  const std::vector<PartId>& find_by(std::string_view words, bool called);
  std::vector<PartId> look_up(std::string_view words, bool called);
  std::vector<PartId> find_spelled(std::string_view words, bool called);
  std::optional<NotationError> counted_or_sized(std::string_view words);
  std::optional<NotationError> two_ways(std::string_view words, const std::vector<PartId>& parts);
  bool size_is_of_those_ports(const PartQuery& query, PartId id);
  bool names_a_thing(std::string_view words);
  /// Of what the words name without their pressure, what goes up to it or opens at it; with why there is none.
  struct ByPressure {
    std::vector<PartId> parts;
    std::optional<NotationError> none;
  };
  ByPressure find_by_pressure(std::string_view words, bool called);
};

}  // namespace riserun::catalog
