#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

bool devices_are_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
    return connection.run() == nullptr && (connection.branched || connection.ends_in);
  });
}

bool way_is_shut_by_hand(const Catalog& catalog, const Way& way) {
  const auto shuts = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    const catalog::Family& family = catalog.family(part.family);
    return family.role == catalog::Role::device && family.can_shut && !part.one_way;
  };
  return (way.device && shuts(*way.device)) ||
         std::any_of(way.parts.begin(), way.parts.end(), [&](const WayPart& part) { return shuts(part.part); });
}

}  // namespace riserun::plan
