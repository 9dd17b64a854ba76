#include "plan/sold.h"

#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

namespace riserun::plan {

namespace {

using catalog::Catalog;
using catalog::PartId;
using quantity::at_most;
using quantity::more_than;

/// The cheapest part, of all that the predicate lets in; larger ports first where the price is the same.
template <class Fits>
std::optional<PartId> cheapest(const Catalog& catalog, Fits fits) {
  std::optional<PartId> best;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (fits(part) && (!best || part.price <= catalog.part(*best).price)) best = PartId{row};
  }
  return best;
}

/// nullopt: it is no relief valve.
std::optional<GaugePressure> relief_opens(const Catalog& catalog, const catalog::Part& part) {
  return catalog.family(part.family).role == catalog::Role::relief_valve ? part.opens_at : std::nullopt;
}

}  // namespace

GaugePressure regulator_range_for(const Catalog& catalog, GaugePressure setting) {
  constexpr double kMostOfRange = 0.7;
  std::optional<GaugePressure> narrowest;
  GaugePressure widest;
  for (const catalog::Part& part : catalog.parts()) {
    if (catalog.family(part.family).role != catalog::Role::regulator || !part.full_scale) continue;
    widest = std::max(widest, *part.full_scale);
    const bool does = at_most(in_pascals(setting), kMostOfRange * in_pascals(*part.full_scale));
    if (does && (!narrowest || *part.full_scale < *narrowest)) narrowest = part.full_scale;
  }
  return narrowest.value_or(widest);
}

std::optional<PartId> regulator_of_range(const Catalog& catalog, GaugePressure range) {
  return cheapest(catalog, [&](const catalog::Part& part) {
    return catalog.family(part.family).role == catalog::Role::regulator && part.full_scale == range;
  });
}

std::optional<PartId> regulator_for_inlet(const Catalog& catalog, GaugePressure range, catalog::PortTypeId inlet) {
  const auto fits = cheapest(catalog, [&](const catalog::Part& part) {
    return catalog.family(part.family).role == catalog::Role::regulator && part.full_scale == range &&
           part.ports[0].type == inlet;
  });
  return fits ? fits : regulator_of_range(catalog, range);
}

Length next_drill_down(Length bore) {
  const Length step = inches(1.0 / 64.0);
  return step * std::floor(bore / step * (1.0 + quantity::kSameShare));
}

Length next_drill_up(Length bore) {
  const Length step = inches(1.0 / 64.0);
  return step * std::ceil(bore / step * (1.0 - quantity::kSameShare));
}

Length restrictor_sold_up_to(const Catalog& catalog, Length bore) {
  Length widest{};
  for (const catalog::Part& part : catalog.parts())
    if (catalog.family(part.family).role == catalog::Role::restrictor && at_most(part.ports[0].bore, bore))
      widest = std::max(widest, part.ports[0].bore);
  return widest;
}

std::optional<GaugePressure> relief_sold_above(const Catalog& catalog, GaugePressure pressure) {
  std::optional<GaugePressure> lowest;
  for (const catalog::Part& part : catalog.parts())
    if (const auto opens = relief_opens(catalog, part);
        opens && more_than(*opens, pressure) && (!lowest || *opens < *lowest))
      lowest = opens;
  return lowest;
}

std::optional<GaugePressure> relief_sold_below(const Catalog& catalog, GaugePressure pressure) {
  std::optional<GaugePressure> highest;
  for (const catalog::Part& part : catalog.parts())
    if (const auto opens = relief_opens(catalog, part);
        opens && more_than(pressure, *opens) && (!highest || *opens > *highest))
      highest = opens;
  return highest;
}

std::optional<PartId> relief_valve_for(const Catalog& catalog, GaugePressure holds, GaugePressure opens_by) {
  std::optional<GaugePressure> nearest;
  for (const catalog::Part& part : catalog.parts())
    if (const auto opens = relief_opens(catalog, part);
        opens && more_than(*opens, holds) && at_most(*opens, opens_by) && (!nearest || more_than(*opens, *nearest)))
      nearest = opens;
  if (!nearest) return std::nullopt;
  return cheapest(catalog, [&](const catalog::Part& part) {
    const auto opens = relief_opens(catalog, part);
    return opens && at_most(*opens, *nearest) && at_most(*nearest, *opens);
  });
}

std::optional<PartId> wider_relief_valve(const Catalog& catalog, GaugePressure opens, Length bore) {
  const auto does = [&](const catalog::Part& part) {
    const auto own = relief_opens(catalog, part);
    return own && at_most(*own, opens) && at_most(opens, *own) && at_most(bore, part.ports[0].bore);
  };
  std::optional<Length> narrowest;
  for (const catalog::Part& part : catalog.parts())
    if (does(part) && (!narrowest || part.ports[0].bore < *narrowest)) narrowest = part.ports[0].bore;
  if (!narrowest) return std::nullopt;
  return cheapest(catalog,
                  [&](const catalog::Part& part) { return does(part) && at_most(part.ports[0].bore, *narrowest); });
}

std::vector<PartId> parts_of(const Catalog& catalog, std::string_view family, std::string_view material) {
  const auto of_family = catalog.find_family(family);
  const auto of_material = catalog.find_material(material);
  std::vector<PartId> parts;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (part.family == of_family && (material.empty() || part.material == of_material)) parts.push_back({row});
  }
  return parts;
}

std::vector<PartId> vent_valves(const Catalog& catalog) {
  std::vector<PartId> valves = parts_of(catalog, "ball valve", "brass");
  std::stable_sort(valves.begin(), valves.end(),
                   [&](PartId a, PartId b) { return catalog.part(a).ports[0].bore < catalog.part(b).ports[0].bore; });
  return valves;
}

std::optional<PartId> fill_plug(const Catalog& catalog) {
  const auto size = catalog.find_size("3/4");
  return cheapest(catalog, [&](const catalog::Part& part) {
    const catalog::Family& family = catalog.family(part.family);
    if (family.role != catalog::Role::plug || !part.stocked || !part.air || !size) return false;
    const catalog::PortType& port = catalog.port_type(part.ports[0].type);
    return catalog.material(part.material).compressed_air && port.size == *size && port.end == catalog::End::male &&
           catalog.kind(port.kind).id == "npt";
  });
}

std::optional<PartId> vent_valve(const Catalog& catalog) {
  const std::vector<PartId> valves = vent_valves(catalog);
  const auto usual =
      std::find_if(valves.begin(), valves.end(), [&](PartId valve) { return catalog.part(valve).size == "3/4"; });
  return usual == valves.end() ? std::nullopt : std::optional(*usual);
}

}  // namespace riserun::plan
