#include "report/text/catalog_text.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

std::string ports_of(const catalog::Catalog& catalog, const catalog::Part& part) {
  std::string text;
  for (const catalog::Port& port : part.ports) text += (text.empty() ? "" : " x ") + catalog.written(port.type);
  return text;
}

}  // namespace

std::string catalog_text(const catalog::Catalog& catalog, std::span<const catalog::PartId> parts, const Style& style) {
  std::vector<std::vector<std::string>> rows = {{"part", "material", "ports", "rating", "price", "", "id"}};
  for (const catalog::PartId id : parts) {
    const catalog::Part& part = catalog.part(id);
    rows.push_back({part.name, catalog.material(part.material).name, ports_of(catalog, part),
                    write_pressure_alone(part.rating, style.units), write_price(part.price),
                    part.stocked ? "" : "special order", part.id});
  }
  return columns(rows, "", {3, 4}) +
         fmt::format("{}; ratings are for water at room temperature, prices are indicative.\n",
                     counted(static_cast<long>(parts.size()), "part", "parts"));
}

}  // namespace riserun::report
