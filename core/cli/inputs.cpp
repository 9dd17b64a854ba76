#include "cli/inputs.h"

#include "catalog/load/load.h"
#include "catalog/words/avoided_parts.h"
#include "catalog/words/part_search.h"
#include "catalog/words/port_notation.h"
#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

namespace riserun::cli {

Stock load_stock(const CommonOptions& common) {
  const std::vector<std::filesystem::path> own_files(common.catalog_files.begin(), common.catalog_files.end());
  catalog::Catalog shipped = catalog::load_shipped_catalog(own_files);
  if (common.bin_file.empty()) return {std::make_shared<const catalog::Catalog>(std::move(shipped)), {}};
  catalog::CatalogWithBin both = catalog::load_bin(std::move(shipped), common.bin_file, units_given(common));
  return {std::make_shared<const catalog::Catalog>(std::move(both.catalog)), std::move(both.bin)};
}

void WordReader::add(const std::string& option, const std::string& text, const std::string& message,
                     std::size_t offset) {
  const std::size_t column = quantity::count_characters(std::string_view(text).substr(0, offset)) + 1;
  problems_.push_back({option, 0, static_cast<int>(column), message, text});
}

void WordReader::finish() const {
  if (!problems_.empty()) throw quantity::InputError(problems_);
}

catalog::MadePort WordReader::port(const catalog::Catalog& catalog, const std::string& text) {
  if (!is_text("port", text)) return {};
  const auto reading = catalog::read_made_port(catalog, text);
  if (const auto* made = std::get_if<catalog::MadePort>(&reading)) return *made;
  const auto& error = std::get<catalog::NotationError>(reading);
  add("port", text, error.message, error.offset);
  return {};
}

bool WordReader::is_text(const std::string& option, const std::string& words) {
  const auto wrong = quantity::first_unprintable(words);
  if (!wrong) return true;
  add(option, words, wrong->words() + "; words are letters, digits, signs and blanks", wrong->offset);
  return false;
}

std::vector<catalog::PartId> WordReader::parts(const catalog::Catalog& catalog, const std::string& option,
                                               const std::string& words) {
  if (!is_text(option, words)) return {};
  auto found = catalog::PartSearch(catalog).find_called(words);
  if (auto* parts = std::get_if<std::vector<catalog::PartId>>(&found)) return std::move(*parts);
  const auto& error = std::get<catalog::NotationError>(found);
  add(option, words, error.message, error.offset);
  return {};
}

chain::Avoidance WordReader::avoidance(const catalog::Catalog& catalog, const std::string& option,
                                       const std::string& words) {
  if (!is_text(option, words)) return {};
  const std::string_view meant = catalog::without_just(words);
  chain::Avoidance avoidance{std::string(meant), catalog::find_avoided_parts(catalog, words)};
  if (!avoidance.parts.empty()) return avoidance;
  const catalog::NotationError error = catalog::why_no_parts(catalog, meant);
  add(option, words, error.message, words.size() - meant.size() + error.offset);
  return avoidance;
}

std::optional<catalog::MaterialId> WordReader::material(const catalog::Catalog& catalog, const std::string& option,
                                                        const std::string& text) {
  if (text.empty()) return std::nullopt;
  const auto found = catalog.find_material(text);
  if (found) return found;
  std::string names;
  for (const catalog::Material& material : catalog.materials()) names += (names.empty() ? "" : ", ") + material.name;
  add(option, text, fmt::format("'{}' is no material of the catalog; allowed: {}", text, names), 0);
  return std::nullopt;
}

std::size_t WordReader::choice(const std::string& option, const std::string& text,
                               std::span<const std::string_view> words) {
  if (text.empty()) return 0;
  const auto found = std::find(words.begin(), words.end(), text);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  add(option, text, fmt::format("'{}' is not known here; allowed: {}", text, fmt::join(words, ", ")), 0);
  return 0;
}

}  // namespace riserun::cli
