#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

bool devices_are_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
    return connection.run() == nullptr && (connection.branched || connection.ends_in);
  });
}

bool way_is_shut_by_hand(const Catalog& catalog, const Way& way) {
  const auto shuts = [&](PartId part) { return catalog.family(catalog.part(part).family).can_shut; };
  return (way.device && shuts(*way.device)) ||
         std::any_of(way.parts.begin(), way.parts.end(), [&](const WayPart& part) { return shuts(part.part); });
}

}  // namespace riserun::plan
