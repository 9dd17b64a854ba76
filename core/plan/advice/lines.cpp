#include "plan/advice/lines.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <vector>

namespace riserun::plan {

namespace {

bool is_used(const Job& job, const std::string& port) {
  return std::any_of(job.connections.begin(), job.connections.end(), [&](const JobConnection& connection) {
    return connection.from == port || connection.to == port ||
           std::any_of(connection.branches.begin(), connection.branches.end(),
                       [&](const JobBranch& branch) { return branch.to == port; });
  });
}

/// The cheapest that is screwed into the port as it is.
std::optional<PartId> plug_for(const Catalog& catalog, PortTypeId port) {
  std::optional<PartId> plug;
  for (const catalog::Mate& mate : catalog.mates(port))
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const catalog::Part& part = catalog.part(use.part);
      if (catalog.family(part.family).role != catalog::Role::plug || !part.stocked) continue;
      if (!plug || part.price < catalog.part(*plug).price) plug = use.part;
    }
  return plug;
}

void plug(const Catalog& catalog, Job& job, const JobPort& port, Service carries) {
  const auto part = plug_for(catalog, port.type);
  if (!part) return;
  JobConnection connection;
  connection.name = port.name;
  connection.from = port.name;
  connection.ends_in = EndDevice{catalog.part(*part).name, {*part}};
  connection.carries = carries;
  job.connections.push_back(std::move(connection));
}

bool turns_aside(const catalog::Part& part) {
  constexpr double kStraightOn = 180.0;  // degrees between the ports of a part that does not turn
  const double between = part.ports.front().heading_degrees - part.ports.back().heading_degrees;
  return std::abs(std::abs(between) - kStraightOn) > 1.0;
}

}  // namespace

void leave_line_out(const Catalog& catalog, Job& job, const std::string& name) {
  const auto line = std::find_if(job.connections.begin(), job.connections.end(),
                                 [&](const JobConnection& each) { return each.name == name; });
  if (line == job.connections.end()) return;
  std::vector<std::string> ends = {line->from, line->to};
  for (const JobBranch& branch : line->branches) ends.push_back(branch.to);
  const auto to_table = [&](const JobBranch& branch) { return port_named(job.table.ports, branch.to) != nullptr; };
  const auto first = std::find_if(line->branches.begin(), line->branches.end(), to_table);
  if (first == line->branches.end()) {
    job.connections.erase(line);
  } else {
    line->branches.erase(std::remove_if(std::next(first), line->branches.end(), to_table), line->branches.end());
    if (line->branches.size() == 1) {
      line->to = line->branches.front().to;
      line->needs.insert(line->needs.end(), line->branches.front().needs.begin(), line->branches.front().needs.end());
      line->branches.clear();
    }
  }
  for (const std::string& end : ends) {
    const JobPort* port = port_named(job.reservoir.ports, end);
    const Service carries =
        port != nullptr && port->place.value_or(Place::lid) == Place::lid ? Service::air : Service::water;
    if (port == nullptr) port = port_named(job.table.ports, end);
    if (port != nullptr && !is_used(job, end)) plug(catalog, job, JobPort(*port), carries);
  }
}

void add_need(const Catalog& catalog, Job& job, const quantity::Value& name, PartId part) {
  const auto is_regulator = [&](const chain::Need& need) {
    return std::any_of(need.parts.begin(), need.parts.end(), [&](PartId id) {
      return catalog.family(catalog.part(id).family).role == catalog::Role::regulator;
    });
  };
  for (JobConnection& connection : job.connections) {
    if (connection.name != std::get<std::string>(name)) continue;
    const bool from_supply = port_named(job.air.ports, connection.from) != nullptr;
    auto at = std::find_if(connection.needs.begin(), connection.needs.end(), is_regulator);
    if (from_supply && at != connection.needs.end()) ++at;
    if (turns_aside(catalog.part(part))) at = from_supply ? connection.needs.end() : connection.needs.begin();
    chain::Need need;
    need.words = catalog.part(part).name;
    need.parts = {part};
    connection.needs.insert(at, std::move(need));
  }
}

}  // namespace riserun::plan
