#include "gui/model/edit/bin_edits.h"

#include "catalog/load/load.h"
#include "catalog/yaml/document.h"
#include "gui/model/edit/parts_in_words.h"

#include <fmt/format.h>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::CatalogBuilder;
using catalog::Document;
using catalog::Problems;

constexpr int kMostInBin = 10000;

Content content_of(const TextNode& node) {
  if (node.is_text()) return Content(node.scalar);
  if (node.is_list()) {
    Content::List list;
    for (const TextNode& child : node.children) list.push_back(content_of(child));
    return Content(std::move(list));
  }
  Content::Map map;
  for (const TextNode& child : node.children) map.emplace_back(child.key, content_of(child));
  return Content(std::move(map));
}

/// The part that a row of the bin stands for, read as the job reads it; a part measured by hand has an id of its own.
std::string part_of_row(CatalogBuilder& builder, const TextNode& row) {
  Problems problems;
  const Content rows(Content::List{content_of(row)});
  const Document document = Document::parse(written_in_brackets(rows, false), "bin", problems);
  const catalog::Bin bin = catalog::read_bin(document.root(), builder, problems);
  return bin.items.size() == 1 ? builder.so_far().part(bin.items.front().part).id : "";
}

/// The rows that stand for the part.
std::vector<std::size_t> rows_of(const Catalog& catalog, const TextNode& list, const std::string& part) {
  CatalogBuilder builder(catalog);
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < list.children.size(); ++row)
    if (part_of_row(builder, list.children[row]) == part) rows.push_back(row);
  return rows;
}

/// The first of the rows takes the whole count; the others go.
Edited with_count(JobText text, const std::vector<std::size_t>& rows, int count) {
  const std::size_t kept = count > 0 ? 1 : 0;
  for (std::size_t i = rows.size(); i-- > kept;) {
    Edited edited = text.remove(at("bin") / rows[i]);
    if (std::holds_alternative<CannotEdit>(edited)) return edited;
    text = std::get<JobText>(std::move(edited));
  }
  if (kept == 0) return text;
  return text.set(at("bin") / rows.front() / "count", Content(std::to_string(count)));
}

}  // namespace

Edited count_in_bin(const Bench& bench, const CountInBin& act) {
  if (act.count < 0 || act.count > kMostInBin)
    return CannotEdit{fmt::format("{} is no count; allowed is 0 to {}.", act.count, kMostInBin)};
  const TextNode* list = bench.text.find(at("bin"));
  if (list != nullptr && list->is_text())
    return CannotEdit{fmt::format("The bin is kept in a file of its own, {}: change the count there.", list->scalar)};
  if (list != nullptr && list->is_list()) {
    const std::vector<std::size_t> rows = rows_of(bench.shipped, *list, act.part);
    if (!rows.empty()) return with_count(bench.text, rows, act.count);
  }
  if (act.count == 0) return bench.text;
  const auto part = bench.catalog.find_part(act.part);
  if (!part) return CannotEdit{fmt::format("The catalog has no part '{}'.", act.part)};
  return bench.text.append(at("bin"), Content(Content::Map{{"part", Content(words_for(bench.catalog, *part))},
                                                           {"count", Content(std::to_string(act.count))}}));
}

}  // namespace riserun::gui
