// All that words fit, for a look into the catalog, and what they were taken for.
#include "catalog/words/part_fit.h"
#include "catalog/words/part_search.h"
#include "catalog/words/part_words.h"

#include <algorithm>
#include <set>

namespace riserun::catalog {

std::variant<std::vector<PartId>, NotationError> PartSearch::find_all(std::string_view words) {
  auto found = find_called(words);
  if (std::holds_alternative<NotationError>(found) || catalog_.find_part(words)) return found;
  const std::string meant = corrected(words);
  PartQuery query = plain_query(meant);
  known_words().tell_numbers_from_sizes(query);
  const auto is_name = [&](PartId id) {
    return known_words().is_called(query, catalog_.part(id).family, catalog_.part(id).material);
  };
  const std::vector<PartId>& best = std::get<std::vector<PartId>>(found);
  if (query.sizes.empty() || !known_words().printed_as(words).empty()) return found;
  if (std::any_of(best.begin(), best.end(), is_name)) {
    if (query.sizes.size() > 1 || query.in_inches) return found;
    // `1 nipple` is every one of that thread, however long.
    std::vector<PartId> of_size = best;
    for (const PartId id : PartFit(catalog_, known_words(), Naming::called).all(query)) {
      const std::vector<Port>& of_part = catalog_.part(id).ports;
      const bool all_of_it = std::all_of(of_part.begin(), of_part.end(), [&](const Port& port) {
        return catalog_.size_name(catalog_.port_type(port.type).size) == query.sizes.front();
      });
      if (is_name(id) && all_of_it && std::find(best.begin(), best.end(), id) == best.end()) of_size.push_back(id);
    }
    std::stable_partition(of_size.begin() + static_cast<std::ptrdiff_t>(best.size()), of_size.end(),
                          [&](PartId id) { return catalog_.part(id).stocked; });
    return of_size;
  }
  PartQuery with_ports = query_with_ports(ports(), meant);
  if (!with_ports.ports.empty() && with_ports.words.empty() && with_ports.sizes.empty()) query = std::move(with_ports);
  std::vector<PartId> all = PartFit(catalog_, known_words(), Naming::called).all(query);
  if (query.ports.empty()) std::erase_if(all, [&](PartId id) { return !size_is_of_those_ports(query, id); });
  if (all.size() < best.size()) return found;
  return all;
}

// `jic 1/2` is a flare of 1/2, no pipe thread of 1/2 with another flare behind it.
bool PartSearch::size_is_of_those_ports(const PartQuery& query, PartId id) {
  const std::vector<Port>& of_part = catalog_.part(id).ports;
  const auto knows = [&](const Port& port, const Token& word) {
    return known_words().port(port.type).contains(word.text);
  };
  return std::any_of(of_part.begin(), of_part.end(), [&](const Port& one) {
    const std::string& size = catalog_.size_name(catalog_.port_type(one.type).size);
    return std::find(query.sizes.begin(), query.sizes.end(), size) != query.sizes.end() &&
           std::all_of(query.words.begin(), query.words.end(), [&](const Token& word) {
             return knows(one, word) ||
                    std::none_of(of_part.begin(), of_part.end(), [&](const Port& port) { return knows(port, word); });
           });
  });
}

std::vector<std::string> PartSearch::taken_for(std::string_view words, const std::vector<PartId>& parts) {
  if (catalog_.find_part(words) || !known_words().printed_as(words).empty()) return {};
  std::vector<std::string> names;
  std::vector<WordSet> said_by;
  for (const PartId id : parts) {
    const Part& part = catalog_.part(id);
    const std::string& name = catalog_.family(part.family).name;
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    names.push_back(name);
    said_by.push_back(words_of(name));
  }
  // As they are written: what is written short is not said.
  std::set<std::string> written;
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    written.insert(without_plural(lower_case(words.substr(at, end - at))));
    at = end + 1;
  }
  for (const WordSet& name : said_by)
    if (std::any_of(name.begin(), name.end(), [&](const std::string& word) { return written.contains(word); }))
      return {};
  return names;
}

}  // namespace riserun::catalog
