#include "plan/judge/drain.h"

#include "catalog/words/words.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool is_low(const JobPort* port) {
  return port != nullptr && (port->place == Place::side || port->place == Place::floor);
}

}  // namespace

bool reservoir_can_be_emptied(const Plan& plan) {
  return std::any_of(plan.ways.begin(), plan.ways.end(), [&](const Way& way) {
    const ConnectionPlan* connection = connection_named(plan.connections, way.connection);
    if (way.use != WayUse::water || !way.device || connection == nullptr) return false;
    const JobPort* port = port_named(plan.job.reservoir.ports, connection->from);
    return port != nullptr && port->place != Place::lid && way_is_shut_by_hand(*plan.catalog, way);
  });
}

bool has_port_to_drain_by(const Plan& plan) {
  const auto leads_up = [&](const JobPort& port) {
    return std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
      return connection.service == Service::water && !connection.branched &&
             ((connection.from == port.name && port_named(plan.job.table.ports, connection.to) != nullptr) ||
              (connection.to == port.name && port_named(plan.job.table.ports, connection.from) != nullptr));
    });
  };
  const std::vector<JobPort>& ports = plan.job.reservoir.ports;
  return std::any_of(ports.begin(), ports.end(), [&](const JobPort& port) { return is_low(&port) && !leads_up(port); });
}

const ConnectionPlan* table_drain(const Plan& plan) {
  const Catalog& catalog = *plan.catalog;
  const auto lets_out = [&](const Way& way) {
    if (!way.device) return true;  // to another port
    const catalog::Part& part = catalog.part(*way.device);
    return catalog.family(part.family).role != catalog::Role::plug && !part.one_way &&
           !shuts_itself(catalog, *way.device);
  };
  const auto on_table = [&](const std::string& name) { return port_named(plan.job.table.ports, name) != nullptr; };
  for (std::size_t row = 0; row < plan.connections.size(); ++row) {
    const ConnectionPlan& connection = plan.connections[row];
    if (row == plan.water_connection || connection.service != Service::water) continue;
    if (!on_table(connection.from) && std::none_of(connection.ends.begin(), connection.ends.end(), on_table)) continue;
    if (std::any_of(plan.ways.begin(), plan.ways.end(),
                    [&](const Way& way) { return way.connection == connection.name && lets_out(way); }))
      return &connection;
  }
  return nullptr;
}

bool joins_table_and_tank(const Job& job, const ConnectionPlan& connection) {
  const JobPort* riser = riser_bung(job);
  const auto joins = [&](const std::string& table, const std::string& tank) {
    return port_named(job.table.ports, table) != nullptr && port_named(job.reservoir.ports, tank) != nullptr &&
           (riser == nullptr || riser->name != tank);
  };
  return connection.service == Service::water && !connection.branched &&
         (joins(connection.from, connection.to) || joins(connection.to, connection.from));
}

bool leads_back(const Catalog& catalog, const Job& job, const std::vector<Way>& ways,
                const ConnectionPlan& connection) {
  return joins_table_and_tank(job, connection) && std::any_of(ways.begin(), ways.end(), [&](const Way& way) {
           return way.connection == connection.name && way_is_opened_by_hand(catalog, way);
         });
}

bool drains_by_line(const Plan& plan) {
  const TransferPlan& transfer = plan.transfer;
  return transfer.drain.stop == transfer::Stop::goal_reached && transfer.fill.volume > Volume{} &&
         transfer.left_in_table <= transfer.fill.volume * kMostLeftInTable;
}

const ConnectionPlan* drain_in_place_of_line(const Plan& plan) {
  return drains_by_line(plan) ? nullptr : table_drain(plan);
}

const ConnectionPlan* plugged_drain(const Plan& plan) {
  if (reservoir_can_be_emptied(plan)) return nullptr;
  const auto is_plugged = [&](const ConnectionPlan& connection) {
    if (connection.run() == nullptr || !is_low(port_named(plan.job.reservoir.ports, connection.from))) return false;
    const auto& ends = connection.run()->ends;
    return std::all_of(ends.begin(), ends.end(), [&](const chain::RunEnd& end) {
      return end.device && plan.catalog->family(plan.catalog->part(*end.device).family).role == catalog::Role::plug;
    });
  };
  const auto found = std::find_if(plan.connections.begin(), plan.connections.end(), is_plugged);
  return found == plan.connections.end() ? nullptr : &*found;
}

const DrainPlan* drain_of(const Plan& plan, const ConnectionPlan& connection) {
  const auto found = std::find_if(plan.drains.begin(), plan.drains.end(), [&](const DrainPlan& drain) {
    return plan.ways[drain.way].connection == connection.name;
  });
  return found == plan.drains.end() ? nullptr : &*found;
}

void judge_plugged_drain(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const ConnectionPlan* plugged = plugged_drain(plan);
  if (plugged == nullptr) return;
  const std::string names = catalog::lower_case(plugged->from + " " + plugged->name);
  if (names.find("drain") == std::string::npos) return;  // no more is said of it than that nothing drains the tank
  open.not_yet(Topic::connections, fact("drain_is_a_plug", plugged->from), {}, fact("drain_by_a_valve"),
               "common practice");
}

}  // namespace riserun::plan
