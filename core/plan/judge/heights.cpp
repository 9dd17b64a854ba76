// What shows or lets out the reservoir's air stands over its water: a port in a side or in the floor may not.
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <string_view>

namespace riserun::plan {

namespace {

/// The port of the reservoir that the connection stands on; nullptr: none.
const JobPort* port_on_reservoir(const Plan& plan, const ConnectionPlan& connection) {
  const std::vector<JobPort>& ports = plan.job.reservoir.ports;
  if (const JobPort* port = port_named(ports, connection.from)) return port;
  for (const std::string& end : connection.ends)
    if (const JobPort* port = port_named(ports, end)) return port;
  return nullptr;
}

/// What is wrong with it under water; empty: nothing, or it is said elsewhere.
std::string_view wrong_under_water(WayUse use) {
  switch (use) {
    case WayUse::gauge:
      return "gauge_under_water";
    case WayUse::vent:
      return "vent_under_water";
    case WayUse::relief:
      return "relief_valve_under_water";
    case WayUse::feed:
      return "air_comes_in_under_water";
    case WayUse::idle_relief:
    case WayUse::water:
    case WayUse::other:
      break;
  }
  return "";
}

}  // namespace

void judge_heights(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const Length water = plan.levels.charge_depth;
  for (const Way& way : plan.ways) {
    const std::string_view code = wrong_under_water(way.use);
    const auto of_way = std::find_if(plan.connections.begin(), plan.connections.end(),
                                     [&](const ConnectionPlan& each) { return each.name == way.connection; });
    if (code.empty() || of_way == plan.connections.end()) continue;
    const JobPort* port = port_on_reservoir(plan, *of_way);
    if (port == nullptr || !port->place || *port->place == Place::lid) continue;
    const std::string& name = way.branched ? way.end : way.connection;
    if (*port->place == Place::side && !port->face_height)
      open.not_yet(Topic::connections, fact("side_port_of_unknown_height", name, port->name, water), {},
                   fact("give_height_or_lid", port->name, water), "common practice");
    else if (*port->place == Place::floor || !quantity::more_than(*port->face_height, water))
      open.not_yet(Topic::connections, fact(code, name, port->name), {}, fact("port_over_the_water", water),
                   "common practice");
  }
}

}  // namespace riserun::plan
