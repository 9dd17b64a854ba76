// Every port of the reservoir leads somewhere or is closed, and what leads to the air holds it.
#include "catalog/words/words.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool is_named(const JobPort& port, std::string_view word) {
  return catalog::lower_case(port.name).find(word) != std::string::npos;
}

bool on_any(const std::vector<JobPort>& ports, const ConnectionPlan& connection) {
  return port_named(ports, connection.from) != nullptr ||
         std::any_of(connection.ends.begin(), connection.ends.end(),
                     [&](const std::string& end) { return port_named(ports, end) != nullptr; });
}

/// Ports that a line from the riser to the table would join, where no connection does: those that are there for it, by
/// their names, or else are left. nullptr: the line is there, or no port is left for it.
struct LineToMake {
  bool missing = false;
  const JobPort* bung = nullptr;
  const JobPort* inlet = nullptr;

  bool takes(const JobPort& port) const { return &port == bung || &port == inlet; }
};

LineToMake line_to_make(const Plan& plan) {
  const Job& job = plan.job;
  LineToMake line;
  line.missing = std::none_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
    return connection.service == Service::water && on_any(job.reservoir.ports, connection) &&
           on_any(job.table.ports, connection);
  });
  if (!line.missing) return line;
  // What a plug stands on is free for the line.
  const auto is_free = [&](const JobPort& port) {
    return std::none_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
      if (connection.from != port.name)
        return std::find(connection.ends.begin(), connection.ends.end(), port.name) != connection.ends.end();
      return !connection.ends_in ||
             plan.catalog->family(plan.catalog->part(*connection.ends_in).family).role != catalog::Role::plug;
    });
  };
  const auto first = [&](const std::vector<JobPort>& ports, std::string_view word) {
    const auto found = std::find_if(ports.begin(), ports.end(),
                                    [&](const JobPort& port) { return is_named(port, word) && is_free(port); });
    return found == ports.end() ? nullptr : &*found;
  };
  line.bung = riser_bung(job);
  if (line.bung == nullptr) line.bung = first(job.reservoir.ports, "riser");
  line.inlet = first(job.table.ports, "inlet");
  for (const JobPort& port : job.table.ports)
    if (line.inlet == nullptr && is_free(port) && !is_named(port, "drain")) line.inlet = &port;
  return line;
}

/// Without it no air lifts any water, whatever closes the ports that it would join.
void judge_line(const LineToMake& line, Open& open) {
  if (!line.missing) return;
  open.not_yet(Topic::connections, fact("riser_leads_nowhere"), {},
               line.bung != nullptr && line.inlet != nullptr
                   ? fact("connect_riser_and_inlet", line.bung->name, line.inlet->name)
                   : fact("connect_riser_and_table"),
               "common practice");
}

/// Nothing leads from the supply yet: the line that is still to come goes on the bung that is named for it.
bool waits_for_air(const Plan& plan, const JobPort& port) {
  return is_named(port, "air") &&
         std::none_of(plan.connections.begin(), plan.connections.end(),
                      [&](const ConnectionPlan& connection) { return on_any(plan.job.air.ports, connection); });
}

void judge_ports(const Plan& plan, const LineToMake& line, Open& open) {
  for (const JobPort& port : plan.job.reservoir.ports) {
    if (is_used(plan, port.name) || line.takes(port)) continue;
    // A plug there is no drain, and has its own finding.
    const bool drain = is_named(port, "drain") && (port.place == Place::side || port.place == Place::floor);
    open.not_yet(Topic::connections, fact("port_closed_by_nothing", port.name), {},
                 drain                       ? fact("end_port_in_valve", port.name)
                 : waits_for_air(plan, port) ? fact("device_goes_there", "air")
                                             : fact("end_port_in_plug", port.name),
                 "common practice");
  }
}

/// A plug, and a gauge, whose tube is shut.
bool closes_its_port(const Catalog& catalog, const catalog::Part& device) {
  const catalog::Role role = catalog.family(device.family).role;
  return role == catalog::Role::plug || role == catalog::Role::gauge;
}

/// What ends below the water without a valve lets it out as soon as there is pressure.
void judge_drains(const Plan& plan, Open& open) {
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::water || !way.device) continue;
    const bool from_reservoir =
        std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
          return connection.name == way.connection && port_named(plan.job.reservoir.ports, connection.from) != nullptr;
        });
    const catalog::Part& device = plan.catalog->part(*way.device);
    if (!from_reservoir || shuts_itself(*plan.catalog, *way.device) || way_is_shut_by_hand(*plan.catalog, way) ||
        closes_its_port(*plan.catalog, device))
      continue;
    open.not_yet(Topic::connections, fact("water_runs_out", way.branched ? way.end : way.connection, device.name), {},
                 fact("put_a_valve_there"), "common practice");
  }
}

/// What ends under the table's water without a valve never lets it fill.
void judge_table_drains(const Plan& plan, Open& open) {
  const Catalog& catalog = *plan.catalog;
  for (const Way& way : plan.ways) {
    if (!way.device || shuts_itself(catalog, *way.device) || way_is_shut_by_hand(catalog, way)) continue;
    const ConnectionPlan* connection = connection_named(plan.connections, way.connection);
    const JobPort* port = port_named(plan.job.table.ports, connection->from);
    if (port == nullptr || port->place == Place::over_rim) continue;
    if (port->opens_at && *port->opens_at >= plan.levels.table_depth) continue;  // an overflow
    const catalog::Part& device = catalog.part(*way.device);
    if (closes_its_port(catalog, device)) continue;
    open.not_yet(Topic::connections, fact("table_water_runs_out", way.branched ? way.end : way.connection, device.name),
                 {}, fact("put_a_valve_there"), "common practice");
  }
}

/// Water stands over a table's port that opens under the rim.
void judge_table_ports(const Plan& plan, const LineToMake& line, Open& open) {
  for (const JobPort& port : plan.job.table.ports) {
    if (is_used(plan, port.name) || port.place == Place::over_rim || line.takes(port)) continue;
    if (port.opens_at && *port.opens_at >= plan.levels.rim) continue;
    open.not_yet(Topic::connections, fact("table_port_closed_by_nothing", port.name), {},
                 fact("end_port_in_plug", port.name), "common practice");
  }
}

/// A drain's middle may stand so high.
Length highest_drain(const Plan& plan, const JobPort& port) {
  const catalog::JointSize* size = plan.catalog->joint_size(plan.catalog->port_type(port.type));
  const Length half = size != nullptr ? std::max(Length(), size->outside_diameter / 2.0) : Length();
  return std::max(plan.levels.charge_depth * kHighestDrain, half + kBungOverFloor);
}

/// A drain stands where the water is, and where it can be got at.
void judge_drain_places(const Plan& plan, Open& open) {
  for (const JobPort& port : plan.job.reservoir.ports) {
    const auto connection =
        std::find_if(plan.connections.begin(), plan.connections.end(),
                     [&](const ConnectionPlan& each) { return each.from == port.name && each.ends_in; });
    if (connection == plan.connections.end()) continue;
    const std::string names = catalog::lower_case(port.name + " " + connection->name);
    if (port.place == Place::lid && names.find("drain") != std::string::npos)
      open.not_yet(Topic::connections, fact("drain_in_the_lid", connection->name, port.name), {},
                   fact("drain_low_on_the_reservoir"), "common practice");
    if (port.place == Place::side && port.face_height && names.find("drain") != std::string::npos &&
        quantity::more_than(*port.face_height, highest_drain(plan, port)))
      open.not_yet(Topic::connections, fact("drain_high_up", connection->name, *port.face_height), {},
                   fact("drain_so_low", highest_drain(plan, port)), "common practice");
    if (port.place == Place::floor && plan.job.reservoir.supports.floor_carried.value_or(false))
      open.not_yet(Topic::connections, fact("port_under_a_carried_floor", port.name), {},
                   fact("port_in_a_side", port.name), "common practice");
  }
}

}  // namespace

void judge_closed(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const LineToMake line = line_to_make(plan);
  judge_line(line, open);
  judge_ports(plan, line, open);
  judge_drains(plan, open);
  judge_table_drains(plan, open);
  judge_table_ports(plan, line, open);
  judge_drain_places(plan, open);
}

}  // namespace riserun::plan
