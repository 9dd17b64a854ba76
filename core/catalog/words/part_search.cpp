#include "catalog/words/part_search.h"

#include "catalog/words/part_words.h"
#include "catalog/yaml/nearest_name.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace riserun::catalog {

namespace {

constexpr std::size_t kMostListed = 8;
constexpr std::size_t kMostWords = 24;

std::vector<std::string> sorted(std::vector<std::string> texts) {
  std::sort(texts.begin(), texts.end());
  return texts;
}

/// How well a part fits; more is better.
struct Fit {
  bool whole_name = false;
  bool whole_size = false;
  auto operator<=>(const Fit&) const = default;
};

}  // namespace

class PartSearch::Search {
 public:
  Search(const Catalog& catalog, PartWords& words) : catalog_(catalog), words_(words) {}

  /// Parts of the best fit. With `port_words`, a word may also be one of a port or of the part's own title.
  std::vector<PartId> run(PartQuery query, bool port_words) {
    words_.tell_numbers_from_sizes(query);
    tell_who_knows(query);
    std::vector<PartId> best;
    for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
      const std::optional<Fit> fit = fit_of(query, catalog_.part(PartId{row}), port_words);
      if (!fit || (!best.empty() && *fit < best_fit_)) continue;
      if (best.empty() || *fit > best_fit_) best.clear();
      best_fit_ = *fit;
      best.push_back(PartId{row});
    }
    return best;
  }

  /// Of the last run that found anything.
  const Fit& best_fit() const { return best_fit_; }

 private:
  std::optional<Fit> fit_of(const PartQuery& query, const Part& part, bool port_words) {
    for (std::size_t word = 0; word < query.words.size(); ++word)
      if (!knows(part, word, query.words[word].text, port_words)) return std::nullopt;
    if (!has_ports(part, query.ports)) return std::nullopt;
    const std::optional<bool> sizes = whole_size(query, part);
    if (!sizes) return std::nullopt;
    return Fit{words_.is_whole_name(query, part.family, part.material), *sizes};
  }

  /// Which families and materials have each word among their own: asked once, not for every part.
  void tell_who_knows(const PartQuery& query) {
    families_.assign(query.words.size(), std::vector<bool>(catalog_.families().size()));
    materials_.assign(query.words.size(), std::vector<bool>(catalog_.materials().size()));
    for (std::size_t word = 0; word < query.words.size(); ++word) {
      const std::string& text = query.words[word].text;
      for (std::uint32_t row = 0; row < families_[word].size(); ++row)
        families_[word][row] = words_.family(FamilyId{row}).contains(text);
      for (std::uint32_t row = 0; row < materials_[word].size(); ++row)
        materials_[word][row] = words_.material(MaterialId{row}).contains(text);
    }
  }

  bool knows(const Part& part, std::size_t place, const std::string& word, bool port_words) {
    if (families_[place][part.family.row] || materials_[place][part.material.row]) return true;
    if (!port_words) return false;
    for (const Port& port : part.ports)
      if (words_.port(port.type).contains(word)) return true;
    const bool maybe = lower_case(part.name).find(word) != std::string::npos;  // spares splitting most names
    return maybe && words_of(part.name).contains(word);
  }

  static bool has_ports(const Part& part, std::vector<PortTypeId> wanted) {
    for (const Port& port : part.ports) {
      const auto found = std::find(wanted.begin(), wanted.end(), port.type);
      if (found != wanted.end()) wanted.erase(found);
    }
    return wanted.empty();
  }

  /// Nothing: the part has not these sizes. True: they are all the sizes that it has.
  std::optional<bool> whole_size(const PartQuery& query, const Part& part) const {
    if (query.sizes.empty()) return false;
    const std::vector<std::string> wanted = sorted(query.sizes);
    const std::vector<std::string> has = sorted(sizes_of(part.size));
    if (wanted == has) return true;
    std::vector<std::string> ports;
    for (const Port& port : part.ports) ports.push_back(catalog_.size_name(catalog_.port_type(port.type).size));
    ports = sorted(std::move(ports));
    if (wanted == ports) return true;
    const bool some = std::includes(has.begin(), has.end(), wanted.begin(), wanted.end()) ||
                      std::includes(ports.begin(), ports.end(), wanted.begin(), wanted.end());
    return some ? std::optional(false) : std::nullopt;
  }

  const Catalog& catalog_;
  PartWords& words_;
  std::vector<std::vector<bool>> families_;  // by word of the query and row
  std::vector<std::vector<bool>> materials_;
  Fit best_fit_;
};

namespace {

std::vector<std::string_view> nearest_words(std::string_view word, const WordSet& all) {
  std::vector<std::pair<std::size_t, std::string_view>> near;
  for (const std::string& known : all) {
    const std::size_t distance = edit_distance(word, known);
    if (distance <= std::max<std::size_t>(1, std::max(word.size(), known.size()) / 3) && distance < known.size())
      near.emplace_back(distance, known);
  }
  std::sort(near.begin(), near.end());
  std::vector<std::string_view> result;
  for (const auto& [distance, known] : near)
    if (result.size() < 4) result.push_back(known);
  return result;
}

std::string some_of(const std::vector<std::string>& names) {
  std::string result;
  for (std::size_t i = 0; i < std::min(names.size(), kMostListed); ++i) result += (i == 0 ? "" : ", ") + names[i];
  return names.size() > kMostListed ? result + " ..." : result;
}

}  // namespace

PartSearch::PartSearch(const Catalog& catalog) : catalog_(catalog) {}
PartSearch::~PartSearch() = default;

const PortNotation& PartSearch::ports() {
  if (!ports_) ports_ = std::make_unique<const PortNotation>(catalog_);
  return *ports_;
}

PartWords& PartSearch::known_words() {
  if (!words_) words_ = std::make_unique<PartWords>(catalog_);
  return *words_;
}

std::vector<PartId> PartSearch::find(std::string_view words) {
  if (const std::optional<PartId> part = catalog_.find_part(words)) return {*part};
  const PartQuery query = plain_query(words);
  if (query.words.empty() && query.sizes.empty()) return {};
  if (query.words.size() + query.sizes.size() > kMostWords) return {};
  Search search(catalog_, known_words());
  std::vector<PartId> parts = search.run(query, false);
  const bool named = !parts.empty() && search.best_fit().whole_name;
  if (named) return parts;
  const PartQuery with_ports = query_with_ports(ports(), words);
  if (!parts.empty() && with_ports.ports.empty()) return parts;
  std::vector<PartId> by_port = search.run(with_ports, true);
  return by_port.empty() ? parts : by_port;
}

NotationError PartSearch::why_none(std::string_view words) {
  for (const Token& token : split_words(words))
    if (token.is_size && (token.text.starts_with('/') || token.text.ends_with('/')))
      return {"'" + token.text + "' is no size; a fraction has two numbers, as 3/4", token.offset, {}};
  PartQuery query = plain_query(words);
  if (query.words.empty() && query.sizes.empty())
    return {"words that name a part are expected, as in '1 x 3/4 reducing coupling'", 0, {}};
  if (query.words.size() + query.sizes.size() > kMostWords) return {"these are too many words for a part", 0, {}};
  Search search(catalog_, known_words());
  known_words().tell_numbers_from_sizes(query);
  const WordSet all = known_words().all_words();
  for (const Token& word : query.words) {
    if (all.contains(word.text)) continue;
    const std::vector<std::string_view> near = nearest_words(word.text, all);
    std::string message = "no part knows the word '" + std::string(words.substr(word.offset, word.length)) + "'";
    if (!near.empty()) message += "; close to it: " + either_of(near);
    return {std::move(message), word.offset, {near.begin(), near.end()}};
  }
  const std::vector<std::string> wanted = std::exchange(query.sizes, {});
  std::vector<std::string> sizes;
  std::vector<std::string> near;  // those with one of the sizes asked for
  for (const PartId id : search.run(query, true)) {
    const std::string& size = catalog_.part(id).size;
    if (std::find(sizes.begin(), sizes.end(), size) != sizes.end()) continue;
    sizes.push_back(size);
    const std::vector<std::string> has = sizes_of(size);
    if (std::find_first_of(has.begin(), has.end(), wanted.begin(), wanted.end()) != has.end()) near.push_back(size);
  }
  if (!near.empty()) sizes = std::move(near);
  if (sizes.empty() || query.words.empty()) return {"no part fits all of '" + std::string(words) + "'", 0, {}};
  return {"no part fits all of '" + std::string(words) + "'; the sizes are " + some_of(sizes), 0, sizes};
}

std::variant<PartId, NotationError> PartSearch::find_one(std::string_view words) {
  std::vector<PartId> parts = find(words);
  // The catalog's own part is meant, unless only parts measured by hand fit.
  const auto is_measured = [&](PartId part) { return catalog_.part(part).measured; };
  if (!std::all_of(parts.begin(), parts.end(), is_measured)) std::erase_if(parts, is_measured);
  if (parts.size() == 1) return parts.front();
  if (parts.empty()) return why_none(words);
  std::vector<std::string> ids;
  for (const PartId part : parts) ids.push_back(catalog_.part(part).id);
  return NotationError{
      "'" + std::string(words) + "' fits " + std::to_string(parts.size()) + " parts, say which: " + some_of(ids), 0,
      ids};
}

std::vector<PartId> find_parts(const Catalog& catalog, std::string_view words) {
  return PartSearch(catalog).find(words);
}

NotationError why_no_parts(const Catalog& catalog, std::string_view words) {
  return PartSearch(catalog).why_none(words);
}

}  // namespace riserun::catalog
