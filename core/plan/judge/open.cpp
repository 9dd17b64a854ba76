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
