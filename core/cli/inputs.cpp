#include "cli/inputs.h"

#include "catalog/load/load.h"
#include "catalog/words/avoided_parts.h"
#include "catalog/words/part_search.h"
#include "catalog/words/port_notation.h"
#include "plan/job/read_job.h"
#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace riserun::cli {

namespace {

/// As a person calls them: without folder and ending, where that tells them apart.
std::string bin_name(const std::vector<std::string>& files, const std::string& file) {
  const auto stem = [](const std::string& path) { return std::filesystem::path(path).stem(); };
  const auto same = std::count_if(files.begin(), files.end(), [&](const auto& one) { return stem(one) == stem(file); });
  return same == 1 ? stem(file).string() : file;
}

}  // namespace

Stock load_stock(const CommonOptions& common) {
  const std::vector<std::filesystem::path> own_files(common.catalog_files.begin(), common.catalog_files.end());
  catalog::Catalog shipped = catalog::load_shipped_catalog(own_files);
  if (common.bin_files.empty()) return {std::make_shared<const catalog::Catalog>(std::move(shipped)), {}, {}};
  Stock stock;
  catalog::CatalogBuilder builder(std::move(shipped));
  for (const std::string& file : common.bin_files)
    if (std::count(common.bin_files.begin(), common.bin_files.end(), file) > 1)
      throw quantity::InputError({{"--bin", 0, 0, fmt::format("'{}' is named twice", quantity::printable(file)), ""}});
  for (const std::string& file : common.bin_files)
    stock.bins.push_back({bin_name(common.bin_files, file), file,
                          catalog::load_bin(builder, std::filesystem::path(file), units_given(common))});
  stock.catalog = std::make_shared<const catalog::Catalog>(std::move(builder).build());
  stock.bin = catalog::all_of(stock.bins);
  return stock;
}

plan::Job load_job(const Stock& stock, const std::string& file, std::ostream& err) {
  plan::Job job = plan::load_job(*stock.catalog, file);
  if (stock.bins.empty()) return job;
  if (!job.bins.empty()) err << "note: the job's own bin is set aside: --bin stands in its place.\n";
  job.bins = stock.bins;
  job.bin = stock.bin;
  return job;
}

void WordReader::add(const std::string& option, const std::string& text, const std::string& message, std::size_t offset,
                     std::string_view code) {
  const std::size_t column = quantity::count_characters(std::string_view(text).substr(0, offset)) + 1;
  problems_.push_back({option, 0, static_cast<int>(column), message, text, std::string(code)});
}

void WordReader::finish() const {
  if (!problems_.empty()) throw quantity::InputError(problems_);
}

catalog::MadePort WordReader::port(const catalog::Catalog& catalog, const std::string& text) {
  if (!is_text("port", text)) return {};
  const auto reading = catalog::read_made_port(catalog, text);
  if (const auto* made = std::get_if<catalog::MadePort>(&reading)) return *made;
  const auto& error = std::get<catalog::NotationError>(reading);
  add("port", text, error.message, error.offset, quantity::mistake::kUnknownPort);
  return {};
}

bool WordReader::is_text(const std::string& option, const std::string& words) {
  const auto wrong = quantity::first_unprintable(words);
  if (!wrong) return true;
  add(option, words, wrong->words() + "; words are letters, digits, signs and blanks", wrong->offset);
  return false;
}

std::vector<catalog::PartId> WordReader::those_found(
    const std::string& option, const std::string& words,
    std::variant<std::vector<catalog::PartId>, catalog::NotationError> found) {
  if (auto* parts = std::get_if<std::vector<catalog::PartId>>(&found)) return std::move(*parts);
  const auto& error = std::get<catalog::NotationError>(found);
  add(option, words, error.message, error.offset, error.code);
  return {};
}

std::vector<catalog::PartId> WordReader::parts(const catalog::Catalog& catalog, const std::string& option,
                                               const std::string& words) {
  if (!is_text(option, words)) return {};
  return those_found(option, words, catalog::PartSearch(catalog).find_called(words));
}

std::vector<catalog::PartId> WordReader::all_parts(const catalog::Catalog& catalog, const std::string& option,
                                                   const std::string& words) {
  if (!is_text(option, words)) return {};
  return those_found(option, words, catalog::PartSearch(catalog).find_all(words));
}

chain::Avoidance WordReader::avoidance(const catalog::Catalog& catalog, const std::string& option,
                                       const std::string& words) {
  if (!is_text(option, words)) return {};
  const std::string_view meant = catalog::without_just(words);
  chain::Avoidance avoidance{std::string(meant), catalog::find_avoided_parts(catalog, words)};
  if (!avoidance.parts.empty()) return avoidance;
  catalog::PartSearch search(catalog);
  const catalog::NotationError error = catalog::why_no_avoided_parts(search, words);
  add(option, words, error.message, error.offset, error.code);
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
  add(option, text, fmt::format("'{}' is not known here; allowed: {}", text, fmt::join(words, ", ")), 0,
      quantity::mistake::kNotOneOf);
  return 0;
}

}  // namespace riserun::cli
