#include "plan/judge/hose_of_size.h"

#include "chain/finder.h"

#include <cstdint>

namespace riserun::plan {

std::optional<PartId> hose_of_size(const Plan& plan, const ConnectionPlan& line) {
  const Catalog& catalog = *plan.catalog;
  const JobPort* port = find_port(plan.job, line.from);
  if (port == nullptr || !port->type.valid()) return std::nullopt;
  const double size = catalog.nominal_inches(catalog.port_type(port->type).size);
  std::optional<PartId> best;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (!part.flexible || !part.cut_to_length || part.remnant || !part.stocked) continue;
    if (catalog.nominal_inches(catalog.port_type(part.ports[0].type).size) != size) continue;
    if (chain::stands_duty(catalog, {row}, line.request) && (!best || part.price < catalog.part(*best).price))
      best = PartId{row};
  }
  return best;
}

}  // namespace riserun::plan
