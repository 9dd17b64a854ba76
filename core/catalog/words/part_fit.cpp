#include "catalog/words/part_fit.h"

#include <algorithm>
#include <utility>

namespace riserun::catalog {

namespace {

std::vector<std::string> sorted(std::vector<std::string> texts) {
  std::sort(texts.begin(), texts.end());
  return texts;
}

}  // namespace

std::vector<PartId> PartFit::run(PartQuery query, bool port_words) {
  words_.tell_numbers_from_sizes(query);
  tell_who_knows(query);
  wanted_ = sorted(query.sizes);
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

std::vector<PartId> PartFit::all(PartQuery query) {
  words_.tell_numbers_from_sizes(query);
  tell_who_knows(query);
  wanted_ = sorted(query.sizes);
  std::vector<PartId> fitting;
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    if (fit_of(query, catalog_.part(PartId{row}), true)) fitting.push_back({row});
  }
  return fitting;
}

std::optional<PartFit::Fit> PartFit::fit_of(const PartQuery& query, const Part& part, bool port_words) {
  for (std::size_t word = 0; word < query.words.size(); ++word)
    if (!knows(part, word, query.words[word].text, port_words)) return std::nullopt;
  if (!has_ports(part, query.ports)) return std::nullopt;
  const std::optional<bool> sizes = whole_size(part);
  if (!sizes) return std::nullopt;
  if (naming_ == Naming::whole) return Fit{words_.is_whole_name(query, part.family, part.material), *sizes, false};
  const bool is_length = query.in_inches && is_as_long_as_said(part);
  const bool first = !query.sizes.empty() && begins_with(part, query.sizes.front());
  return Fit{words_.is_called(query, part.family, part.material), *sizes || is_length, first || is_length};
}

void PartFit::tell_who_knows(const PartQuery& query) {
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

bool PartFit::knows(const Part& part, std::size_t place, const std::string& word, bool port_words) {
  if (families_[place][part.family.row] || materials_[place][part.material.row]) return true;
  if (!port_words) return false;
  for (const Port& port : part.ports)
    if (words_.port(port.type).contains(word)) return true;
  return says(part.name, word) && words_of(part.name).contains(word);  // spares splitting most names
}

bool PartFit::has_ports(const Part& part, std::vector<PortTypeId> wanted) {
  for (const Port& port : part.ports) {
    const auto found = std::find(wanted.begin(), wanted.end(), port.type);
    if (found != wanted.end()) wanted.erase(found);
  }
  return wanted.empty();
}

bool PartFit::is_as_long_as_said(const Part& part) {
  if (wanted_.size() != 1 || part.ports.size() != 2) return false;
  const auto has_it = [&](const Port& port) {
    return catalog_.size_name(catalog_.port_type(port.type).size) == wanted_.front();
  };
  const std::vector<std::string>& has = sizes_said_in(part.size);
  return std::binary_search(has.begin(), has.end(), wanted_.front()) &&
         std::none_of(part.ports.begin(), part.ports.end(), has_it);
}

bool PartFit::begins_with(const Part& part, const std::string& size) const {
  return catalog_.size_name(catalog_.port_type(part.ports.front().type).size) == size;
}

std::optional<bool> PartFit::whole_size(const Part& part) {
  if (wanted_.empty()) return false;
  const std::vector<std::string>& has = sizes_said_in(part.size);
  if (wanted_ == has) return true;
  std::vector<std::string> ports;
  ports.reserve(part.ports.size());
  for (const Port& port : part.ports) ports.push_back(catalog_.size_name(catalog_.port_type(port.type).size));
  ports = sorted(std::move(ports));
  if (wanted_ == ports) return true;
  const bool some = std::includes(has.begin(), has.end(), wanted_.begin(), wanted_.end()) ||
                    std::includes(ports.begin(), ports.end(), wanted_.begin(), wanted_.end());
  return some ? std::optional(false) : std::nullopt;
}

const std::vector<std::string>& PartFit::sizes_said_in(const std::string& size) {
  const auto [found, is_new] = said_.try_emplace(size);
  if (is_new) found->second = sorted(sizes_of(size));
  return found->second;
}

}  // namespace riserun::catalog
