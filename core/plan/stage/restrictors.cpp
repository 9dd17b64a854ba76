#include "plan/stage/restrictors.h"

#include "quantity/nearly.h"

#include <cstdint>
#include <utility>

namespace riserun::plan {

std::optional<catalog::SizeId> inlet_of_regulator(const Inputs& inputs, std::optional<PartId> regulator) {
  const Catalog& catalog = inputs.catalog;
  if (regulator) return catalog.port_type(catalog.part(*regulator).ports[0].type).size;
  for (const JobPort& port : inputs.job.air.ports)
    if (port.type.valid()) return catalog.port_type(port.type).size;
  return std::nullopt;
}

std::optional<PartId> restrictor_up_to(const Inputs& inputs, std::optional<catalog::SizeId> size, Length widest) {
  const Catalog& catalog = inputs.catalog;
  std::optional<PartId> best;
  const auto rank = [&](PartId id) {
    const catalog::Port& port = catalog.part(id).ports[0];
    return std::pair(size && catalog.port_type(port.type).size == *size, port.bore);
  };
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part(PartId{row});
    if (catalog.family(part.family).role != catalog::Role::restrictor ||
        quantity::more_than(part.ports[0].bore, widest))
      continue;
    if (!best || rank(PartId{row}) > rank(*best)) best = PartId{row};
  }
  return best;
}

}  // namespace riserun::plan
