#include "report/text/spares_text.h"

#include "report/text/chain_text.h"
#include "report/text/run_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Spares;
using chain::StockOut;

std::string missing_name(const Catalog& catalog, const StockOut& out, const std::vector<std::string>& names) {
  const std::string part = part_label(catalog, catalog.part(out.missing));
  return names.empty() ? part : fmt::format("{} ({})", part, names[out.chosen]);
}

bool uses(const StockOut& out, chain::PartId spare) {
  return std::find(out.spares.begin(), out.spares.end(), spare) != out.spares.end();
}

std::string covered(const Catalog& catalog, const Spares& spares, chain::PartId spare,
                    const std::vector<std::string>& names) {
  std::string list;
  int count = 0;
  for (const StockOut& out : spares.stock_outs) {
    if (!uses(out, spare)) continue;
    list += (count++ ? "; " : "") + missing_name(catalog, out, names);
  }
  return fmt::format("covers {}: {}", counted(count, "stock-out", "stock-outs"), list);
}

std::string what_to_buy(const Catalog& catalog, const Spares& spares, const std::vector<std::string>& names,
                        const Style& style) {
  std::string text;
  for (std::size_t i = 0; i < spares.parts.size(); ++i) {
    const chain::PartId spare = spares.parts[i];
    if (i > 0 && spares.parts[i - 1] == spare) continue;
    const auto quantity = static_cast<int>(std::count(spares.parts.begin(), spares.parts.end(), spare));
    const catalog::Part& part = catalog.part(spare);
    text += wrapped("    [ ] ",
                    fmt::format("{} more {}, {}: {}", quantity, part_label(catalog, part),
                                write_price(part.price * quantity), covered(catalog, spares, spare, names)),
                    style.width);
  }
  return text;
}

std::string stand_in_line(const Catalog& catalog, const StockOut& out, const std::vector<std::string>& names) {
  const std::string lead = "without " + missing_name(catalog, out, names) + ": ";
  if (out.only_itself) return lead + "nothing else stands in for it, only one more of the same";
  if (out.spares == std::vector<chain::PartId>{out.missing}) return lead + "one more of the same";
  return lead + chain_in_one_line(catalog, out.stand_in);
}

}  // namespace

std::string spares_text(const Catalog& catalog, const Spares& spares, const std::vector<std::string>& names,
                        const Style& style) {
  if (spares.stock_outs.empty()) return "  Spares: none, as no part of a run is bought.\n";
  std::string text;
  if (spares.parts.empty()) {
    text = wrapped("  ", "Spares: none needed; whichever one part is missing, the bin and the rest make up for it.",
                   style.width);
  } else {
    text = wrapped("  ",
                   fmt::format("Spares worth buying, {}: with them any one bought part of a run may be "
                               "missing or broken, and the run can still be made.",
                               write_about(spares.price)),
                   style.width);
    text += what_to_buy(catalog, spares, names, style);
  }
  text += "  If one is missing\n";
  for (const StockOut& out : spares.stock_outs)
    text += wrapped("    - ", stand_in_line(catalog, out, names), style.width);
  return text;
}

}  // namespace riserun::report
