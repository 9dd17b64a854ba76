#include "plan/shop/bin_file.h"

#include "catalog/load/load.h"
#include "catalog/yaml/document.h"
#include "plan/shop/bin_text.h"
#include "plan/shop/table_rows.h"
#include "plan/stage/inputs.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::CannotEdit;
using catalog::Catalog;
using catalog::Edited;
using catalog::JobText;
using quantity::InputError;

namespace {

JobText kept_or_refused(Edited edited, const std::string& name) {
  if (auto* why = std::get_if<CannotEdit>(&edited)) throw InputError({{name, 0, 0, why->reason, ""}});
  return std::get<JobText>(std::move(edited));
}

JobText read(const std::string& text, const std::string& name) {
  auto read = JobText::read(text, name);
  if (auto* problems = std::get_if<std::vector<quantity::Problem>>(&read)) throw InputError(std::move(*problems));
  return std::get<JobText>(std::move(read));
}

}  // namespace

std::string changed_bin(const std::string& text, const std::string& name, const Catalog& catalog,
                        const BinChange& change) {
  JobText bin = read(text, name);
  for (const BinChange::Piece& piece : change.pieces)
    bin = kept_or_refused(with_piece(bin, catalog, piece.part, piece.length, piece.sawn_ends), name);
  for (const BinChange::Count& count : change.counts) {
    if (count.more == 0) continue;
    const int there = count_in(bin, catalog, count.part);
    if (there + count.more < 0)
      throw InputError(
          {{name, 0, 0, fmt::format("holds {} of '{}', and {} would be taken", there, count.part, -count.more), ""}});
    bin = kept_or_refused(with_count(bin, catalog, count.part, there + count.more), name);
  }
  return bin.text();
}

std::filesystem::path before_file(const std::filesystem::path& bin) { return bin.string() + ".before"; }

BinChange change_of_list(const std::filesystem::path& list, const Catalog& catalog) {
  BinChange change;
  if (catalog::is_table_file(list)) {
    for (const TableRow& row : bought_rows(list)) change.counts.push_back({row.part, row.quantity, 0});
    return change;
  }
  catalog::CatalogBuilder builder(catalog);
  const catalog::Bin bin = catalog::load_bin(builder, list, std::nullopt);
  for (const catalog::BinItem& item : bin.items) {
    const catalog::Part& part = builder.so_far().part(item.part);
    const std::optional<PartId> whole = catalog::sold_part_of(catalog, part);
    if (part.remnant && whole)
      change.pieces.insert(change.pieces.end(), static_cast<std::size_t>(item.count),
                           {*whole, straight_length(part), part.sawn_ends});
    else
      change.counts.push_back({part.id, item.count, 0});
  }
  return change;
}

}  // namespace riserun::plan
