#include "plan/stage/riser_bushing.h"

#include "plan/sold.h"

#include <algorithm>
#include <vector>

namespace riserun::plan {

namespace {

/// Of the weld coupling that takes that male thread; zero: the catalog has none.
Length opening_for(const Catalog& catalog, PortTypeId outer) {
  for (const catalog::Mate& mate : catalog.mates(outer))
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const catalog::Part& part = catalog.part(use.part);
      if (catalog.family(part.family).weld_bung == catalog::WeldBung::full_coupling) return part.ports[use.port].bore;
    }
  return {};
}

std::optional<RiserBushing> as_bushing(const Catalog& catalog, PartId id, PortTypeId inner) {
  const catalog::Part& part = catalog.part(id);
  if (part.ports.size() != 2 || part.ports[1].type != inner) return std::nullopt;
  const auto size_of = [&](const catalog::Port& port) { return catalog.size_name(catalog.port_type(port.type).size); };
  return RiserBushing{id, size_of(part.ports[0]), size_of(part.ports[1]), opening_for(catalog, part.ports[0].type)};
}

}  // namespace

std::optional<RiserBushing> riser_bushing(const Catalog& catalog, PortTypeId inner, Length outside,
                                          std::optional<PartId> named) {
  if (named) return as_bushing(catalog, *named, inner);
  std::optional<RiserBushing> best;
  for (const PartId id : parts_of(catalog, "double-tapped bushing")) {
    const auto bushing = as_bushing(catalog, id, inner);
    if (bushing && bushing->opening > outside && (!best || bushing->opening < best->opening)) best = bushing;
  }
  return best;
}

}  // namespace riserun::plan
