#include "plan/shop/table_rows.h"

#include "catalog/yaml/document.h"
#include "catalog/yaml/fields.h"
#include "quantity/read.h"

#include <utility>

namespace riserun::plan {

using catalog::Value;

std::vector<TableRow> bought_rows(const std::filesystem::path& table) {
  catalog::Problems problems;
  const catalog::Document document = catalog::Document::load(table, problems);
  std::vector<TableRow> rows;
  bool any = false;
  const auto quantity = [](std::string_view text) {
    return quantity::within(quantity::read_count(text), quantity::Range<int>{0, 10000}, text);
  };
  for (const Value& row : document.root().items()) {
    any = any || row["what"].exists();
    if (row["what"].text() == kRefusedRow)
      problems.add(row, "the job is refused, so nothing of it was to be bought: " + std::string(row["name"].text()));
    if (row["what"].text() != "buy" || !row["id"].exists()) continue;
    if (!row["quantity"].exists()) {
      problems.add(row, "how many? the row has nothing under 'quantity'");
      continue;
    }
    if (const auto count = catalog::read_with(row["quantity"], quantity, problems))
      rows.push_back({std::string(row["id"].text()), *count});
  }
  if (!any && problems.empty())
    problems.add(document.root(), "has no row with 'what', 'quantity' and 'id': is it a list of riserun?");
  std::move(problems).throw_if_any();
  return rows;
}

}  // namespace riserun::plan
