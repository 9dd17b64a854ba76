#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

Mend into_lid(const std::string& port) { return {fact("port_into_lid", port), {}, {{{kPortIntoLid, port}}}}; }

Mend into_floor(const std::string& port) { return {fact("port_into_floor", port), {}, {{{kPortIntoFloor, port}}}}; }

bool devices_are_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
    return connection.run() == nullptr && (connection.branched || connection.ends_in);
  });
}

const chain::Need* asked_check(const Catalog& catalog, const ConnectionPlan& connection) {
  const auto is_check = [&](PartId part) {
    return catalog.family(catalog.part(part).family).role == catalog::Role::check_valve;
  };
  for (const chain::Need& need : connection.request.needs)
    if (!need.parts.empty() && std::all_of(need.parts.begin(), need.parts.end(), is_check)) return &need;
  return nullptr;
}

bool is_asked_as_vent(const Catalog& catalog, const Job& job, const ConnectionPlan& connection) {
  if (connection.service != Service::air || !connection.ends_in) return false;
  const catalog::Part& end = catalog.part(*connection.ends_in);
  const catalog::Family& family = catalog.family(end.family);
  return family.role == catalog::Role::device && family.can_shut && !end.one_way &&
         port_named(job.reservoir.ports, connection.from) != nullptr;
}

bool feed_is_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
    const bool from_supply = port_named(plan.job.air.ports, connection.from) != nullptr ||
                             std::any_of(connection.ends.begin(), connection.ends.end(), [&](const std::string& end) {
                               return port_named(plan.job.air.ports, end) != nullptr;
                             });
    return connection.run() == nullptr && from_supply;
  });
}

}  // namespace riserun::plan
