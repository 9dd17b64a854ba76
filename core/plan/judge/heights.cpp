// What shows or lets out the reservoir's air stands over its water: a port in a side or in the floor may not.
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <optional>
#include <utility>

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

/// What is wrong with it under water; nullopt: nothing, or it is said elsewhere.
std::optional<Fact> wrong_under_water(const Way& way, const std::string& port) {
  const std::string& name = way.branched ? way.end : way.connection;
  switch (way.use) {
    case WayUse::gauge:
      return fact("gauge_under_water", name, port);
    case WayUse::vent:
      return fact("vent_under_water", name, port);
    case WayUse::relief:
      return fact("relief_valve_under_water", name, port);
    case WayUse::feed:
      return fact("air_comes_in_under_water", name, port);
    case WayUse::idle_relief:
    case WayUse::water:
    case WayUse::other:
      break;
  }
  return std::nullopt;
}

/// Of the port's thread, which is wider than its nominal size: what the water may not reach.
Length half_of_bore(const Catalog& catalog, const JobPort& port) {
  const catalog::JointSize* size = catalog.joint_size(catalog.port_type(port.type));
  return size != nullptr && size->outside_diameter > Length() ? size->outside_diameter / 2.0 : Length();
}

bool is_in_lid(const JobPort& port) { return !port.place || *port.place == Place::lid; }

}  // namespace

void judge_heights(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const Length water = plan.levels.charge_depth;
  for (const Way& way : plan.ways) {
    const ConnectionPlan* of_way = connection_named(plan.connections, way.connection);
    const JobPort* port = of_way != nullptr ? port_on_reservoir(plan, *of_way) : nullptr;
    auto wrong = port != nullptr ? wrong_under_water(way, port->name) : std::nullopt;
    if (!wrong) continue;
    if (is_in_lid(*port)) {
      const Length mouth = plan.job.reservoir.height - port->projects.value_or(Length());
      // Of a charge that leaves no air the charge is what is wrong, and has its own finding.
      const Length highest = plan.job.reservoir.height * (1.0 - kLeastAirSpace);
      if (quantity::more_than(mouth, std::min(water, highest))) {
        // One that ends at the lid has what air there is; the least of that has its own finding.
        if (port->projects && quantity::more_than(water + kClearOfWater, mouth))
          open.not_yet(Topic::connections,
                       fact("bung_ends_close_over_the_water", way.branched ? way.end : way.connection, port->name,
                            mouth - water),
                       Against{mouth, water + kClearOfWater},
                       fact("bung_that_ends_over_the_water", water + kClearOfWater), "common practice");
        continue;
      }
      open.not_yet(Topic::connections, std::move(*wrong), {}, fact("bung_that_ends_over_the_water", water),
                   "common practice");
      continue;
    }
    Finding* finding = nullptr;
    if (*port->place == Place::side && !port->face_height)
      finding =
          &open.not_yet(Topic::connections,
                        fact("side_port_of_unknown_height", way.branched ? way.end : way.connection, port->name, water),
                        {}, fact("give_height_or_lid", water, port->name), "common practice");
    else if (*port->place == Place::floor ||
             !quantity::more_than(*port->face_height - half_of_bore(*plan.catalog, *port), water))
      finding = &open.not_yet(Topic::connections, std::move(*wrong), {}, fact("port_over_the_water", water),
                              "common practice");
    if (finding != nullptr) finding->or_else = {into_lid(port->name)};
  }
}

}  // namespace riserun::plan
