#include "report/text/assembly_text.h"

#include "report/text/run_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::NoAssembly;

std::string none_text(const Catalog& catalog, const NoAssembly& none, const Style& style) {
  const UnitSystem units = style.units;
  std::string text = wrapped("  ", "No assembly: " + say(none.reason, units) + ".", style.width);
  if (none.way && none.way->special_order)
    text += wrapped(
        "  ",
        fmt::format("A special order leads there: {}.", part_label(catalog, catalog.part(*none.way->special_order))),
        style.width);
  if (none.way && none.way->missing_part)
    text += wrapped("  ", "One part would lead there, if it can be had: " + say(*none.way->missing_part, units) + ".",
                    style.width);
  text += bullet_list("Any one of these mends it", say_all(none.mends, units), style);
  if (none.way) text += bullet_list("Do not try", say_all(none.way->look_alikes, units), style);
  return text;
}

}  // namespace

std::string assembly_text(const Catalog& catalog, const chain::AssemblyRequest& request,
                          const chain::AssemblyAnswer& answer, const Style& style) {
  if (const auto* none = std::get_if<NoAssembly>(&answer)) return none_text(catalog, *none, style);
  return run_text(catalog, request.rules, std::get<chain::Assembly>(answer), style);
}

}  // namespace riserun::report
