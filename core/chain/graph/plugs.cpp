#include "chain/graph/plugs.h"

namespace riserun::chain {

bool is_plug(const Rules& rules, PartId id) {
  const Catalog& catalog = rules.catalog();
  return catalog.family(catalog.part(id).family).role == catalog::Role::plug && rules.admits(id);
}

bool plugs(const Rules& rules, PartId plug, PortTypeId port, MaterialId host) {
  const catalog::Part& part = rules.catalog().part(plug);
  return rules.catalog().mating_rule(port, part.ports[0].type) != nullptr && rules.may_meet(part.material, host);
}

std::vector<PartId> plugs_of(const Rules& rules, PortTypeId port, MaterialId host) {
  const Catalog& catalog = rules.catalog();
  std::vector<PartId> found;
  for (const catalog::Mate& mate : catalog.mates(port))
    for (const catalog::PortUse& use : catalog.uses(mate.other))
      if (is_plug(rules, use.part) && rules.may_meet(catalog.part(use.part).material, host)) found.push_back(use.part);
  return found;
}

}  // namespace riserun::chain
