#include "report/page/list_csv.h"

#include "plan/shop/table_rows.h"
#include "report/page/escape.h"
#include "report/words/lid_rows.h"
#include "report/words/list_words.h"
#include "report/words/remark_words.h"

#include <fmt/format.h>

#include <array>
#include <optional>

namespace riserun::report {

namespace {

constexpr std::size_t kColumns = 15;
using Row = std::array<std::string, kColumns>;

std::string line_of(const Row& row) { return fmt::format("{}\r\n", fmt::join(row, ",")); }

std::string dollars(Price price) {
  return price.known() ? fmt::format("{}.{:02}", price.cents() / 100, price.cents() % 100) : "";
}

Row item_row(const plan::ListItem& item, const char* what, UnitSystem units) {
  const bool bought = std::string_view(what) == "buy";
  return {what,
          fmt::format("{}", item.quantity),
          item.by_the_foot ? "ft" : "piece",
          csv_text(item_called(item, units) + (item.measure ? ", " + item_size(item, units) : "") + places_of(item)),
          csv_text(item.material),
          bought ? dollars(item.each) : "",
          bought ? dollars(item.price()) : "",
          csv_text(item.shelf),
          item.special_order && bought ? "yes" : "no",
          csv_text(joined(item.used_for, "; ")),
          csv_text(joined(item.instead, "; ")),
          csv_text(item.id),
          "",
          "",
          ""};
}

Row consumable_row(const plan::Consumable& item, UnitSystem units) {
  return {"consumable",
          "",
          "",
          csv_text(consumable_name(item, units) + ", " + item.quantity),
          "",
          "",
          "",
          "",
          "",
          csv_text(item.why),
          "",
          "",
          "",
          "",
          ""};
}

std::string measure(const std::optional<Length>& length, UnitSystem units) {
  if (!length) return "";
  return units == UnitSystem::inch ? fmt::format("{:.4f}", in_inches(*length))
                                   : fmt::format("{:.1f}", in_millimetres(*length));
}

Row cut_row(const plan::CutItem& cut, UnitSystem units) {
  return {"cut",
          fmt::format("{}", cut.quantity),
          "piece",
          csv_text(stock_words(cut.stock, units) +
                   (cut.thickness ? fmt::format(", {} thick", write_length(*cut.thickness, units)) : "")),
          "",
          "",
          "",
          "",
          "",
          csv_text(cut.used_for),
          csv_text(cut_remark(cut, units)),
          "",
          csv_text(cut_size(cut, units)),
          measure(cut.length, units),
          measure(cut.width, units)};
}

/// A round hole's diameter is its length.
Row hole_row(const HoleRow& hole, UnitSystem units) {
  return {"hole",
          fmt::format("{}", hole.count),
          "piece",
          csv_text(hole.what),
          "",
          "",
          "",
          "",
          "",
          csv_text(hole.used_for),
          csv_text(hole.where),
          "",
          csv_text(hole.size),
          measure(hole.across, units),
          measure(hole.width, units)};
}

/// Of a refused job there is nothing to buy, to cut or to drill: a row for each reason, under the job's name.
std::string refused_rows(const plan::Plan& plan, UnitSystem units) {
  std::string text;
  for (const plan::Finding& finding : plan.findings) {
    if (finding.severity != plan::Severity::refused) continue;
    Row row;
    row[0] = plan::kRefusedRow;
    row[3] = csv_text(plan.job.name.empty() ? "this job" : plan.job.name);
    row[10] = csv_text(sentences_of(finding, units));
    text += line_of(row);
  }
  return text;
}

}  // namespace

std::string list_csv(const plan::Plan& plan, UnitSystem units) {
  const bool inch = units == UnitSystem::inch;
  std::string text = line_of({"what", "quantity", "unit", "name", "material", "price each ($)", "price ($)", "shelf",
                              "special order", "for", "or else; how", "id", "cut to",
                              inch ? "length (in)" : "length (mm)", inch ? "width (in)" : "width (mm)"});
  if (plan.verdict == plan::Verdict::refused) return text + refused_rows(plan, units);
  for (const plan::ListItem& item : plan.list.buy) text += line_of(item_row(item, "buy", units));
  for (const plan::ListItem& item : plan.list.from_bin) text += line_of(item_row(item, "bin", units));
  for (const plan::CutItem& cut : plan.list.cut) text += line_of(cut_row(cut, units));
  for (const HoleRow& hole : holes_to_cut(plan, units)) text += line_of(hole_row(hole, units));
  for (const plan::Consumable& item : plan.list.consumables) text += line_of(consumable_row(item, units));
  return text;
}

}  // namespace riserun::report
