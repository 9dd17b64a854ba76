#include "plan/shop/bin_text.h"

#include "catalog/load/load.h"
#include "catalog/words/part_search.h"
#include "catalog/yaml/document.h"
#include "quantity/write.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::at;
using catalog::CannotEdit;
using catalog::Catalog;
using catalog::CatalogBuilder;
using catalog::Content;
using catalog::Document;
using catalog::Edited;
using catalog::JobText;
using catalog::PartId;
using catalog::Problems;
using catalog::TextNode;

namespace {

struct Rows {
  std::vector<std::string> parts;  // their ids, row by row
  std::vector<int> counts;
};

/// Empty where there is no list, or where it does not read.
Rows rows_of(const JobText& text, const Catalog& catalog) {
  Rows rows;
  const TextNode* list = text.find(at("bin"));
  if (list == nullptr || !list->is_list()) return rows;
  Problems problems;
  Document document = Document::parse(text.text(), "bin", problems);
  document.settle_units(std::nullopt);
  CatalogBuilder builder(catalog);
  const std::vector<catalog::BinItem> items = catalog::read_bin_rows(document.root()["bin"], builder, problems);
  if (!problems.empty() || items.size() != list->children.size()) return rows;
  for (const catalog::BinItem& item : items) {
    rows.parts.push_back(builder.so_far().part(item.part).id);
    rows.counts.push_back(item.count);
  }
  return rows;
}

/// The first of the rows takes the whole count; the others go. Where no row would be left the first one stays with
/// none, so that the file stays a bin.
Edited with_rows(JobText text, const std::vector<std::size_t>& rows, int count) {
  const bool all = rows.size() == text.find(at("bin"))->children.size();
  const std::size_t kept = count > 0 || all ? 1 : 0;
  for (std::size_t i = rows.size(); i-- > kept;) {
    Edited edited = text.remove(at("bin") / rows[i], catalog::CommentsAbove::go_too);
    if (std::holds_alternative<CannotEdit>(edited)) return edited;
    text = std::get<JobText>(std::move(edited));
  }
  if (kept == 0) return text;
  return text.set(at("bin") / rows.front() / "count", Content(std::to_string(count)));
}

}  // namespace

bool mean_only(const Catalog& catalog, const std::string& words, PartId part) {
  const std::vector<PartId> found = catalog::find_parts(catalog, words);
  return found.size() == 1 && found.front() == part;
}

std::string words_for(const Catalog& catalog, PartId part) {
  const catalog::Part& it = catalog.part(part);
  const std::string words = it.name + " " + catalog.material(it.material).name;
  return mean_only(catalog, words, part) ? words : it.id;
}

Edited with_count(const JobText& text, const Catalog& catalog, const std::string& part, int count) {
  const Rows all = rows_of(text, catalog);
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < all.parts.size(); ++row)
    if (all.parts[row] == part) rows.push_back(row);
  if (!rows.empty()) return with_rows(text, rows, count);
  if (count <= 0) return text;
  const auto known = catalog.find_part(part);
  if (!known) return CannotEdit{fmt::format("The catalog has no part '{}'.", part)};
  return text.append(at("bin"), Content(Content::Map{{"part", Content(words_for(catalog, *known))},
                                                     {"count", Content(std::to_string(count))}}));
}

int count_in(const JobText& text, const Catalog& catalog, const std::string& part) {
  const Rows all = rows_of(text, catalog);
  int count = 0;
  for (std::size_t row = 0; row < all.parts.size(); ++row)
    if (all.parts[row] == part) count += all.counts[row];
  return count;
}

Edited with_piece(const JobText& text, const Catalog& catalog, PartId part, Length length, int sawn_ends) {
  Content::Map row{{"part", Content(words_for(catalog, part))},
                   {"length", Content(quantity::write_length(length, quantity::UnitSystem::inch))}};
  if (sawn_ends > 0) row.emplace_back("ends", Content(std::string(catalog::ends_of_piece(sawn_ends))));
  return text.append(at("bin"), Content(std::move(row)));
}

}  // namespace riserun::plan
