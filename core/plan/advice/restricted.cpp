#include "plan/advice/restricted.h"

#include "quantity/nearly.h"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace riserun::plan {

namespace {

std::vector<PartId> widest_up_to(const Catalog& catalog, Length hole) {
  std::vector<PartId> parts;
  Length widest{};
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (catalog.family(part.family).role != catalog::Role::restrictor) continue;
    const Length bore = part.ports[0].bore;
    if (quantity::more_than(bore, hole) || bore < widest) continue;
    if (bore > widest) parts.clear();
    widest = bore;
    parts.push_back({row});
  }
  return parts;
}

/// @return the rules name a regulator
bool restrict_run(const Catalog& catalog, const std::vector<PartId>& parts, bool from_supply, chain::RunRules& rules) {
  const auto is_all = [&](catalog::Role role) {
    return [&catalog, role](const chain::Need& need) {
      return std::all_of(need.parts.begin(), need.parts.end(),
                         [&](PartId part) { return catalog.family(catalog.part(part).family).role == role; });
    };
  };
  std::vector<chain::Need>& needs = rules.needs;
  if (std::none_of(needs.begin(), needs.end(), is_all(catalog::Role::regulator))) return false;
  std::erase_if(needs, is_all(catalog::Role::restrictor));
  const auto regulator = std::find_if(needs.begin(), needs.end(), is_all(catalog::Role::regulator));
  needs.insert(from_supply ? regulator : regulator + 1, chain::Need{"restrictor", parts});
  rules.needs_in_order = true;
  rules.special_order = true;
  return true;
}

}  // namespace

void restrict_before_regulators(const Catalog& catalog, Job& job, Length hole) {
  const std::vector<PartId> parts = widest_up_to(catalog, hole);
  bool any = false;
  if (!parts.empty())
    for (JobConnection& connection : job.connections)
      any = restrict_run(catalog, parts, port_named(job.air.ports, connection.from) != nullptr, connection) || any;
  if (!any || job.air.restrictor) job.air.restrictor = hole;
}

}  // namespace riserun::plan
