// What must agree between the parts of a job, once each has been read.
#include "plan/job/job_reading.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <map>

namespace riserun::plan {

using catalog::Value;

namespace {

const double kMostToRust = 0.5;  // of a sheet's thickness

/// Where a mistake is shown: the value itself, or where it should have been.
void check_heights(JobReading& reading, const Value& root, const Job& job) {
  const Length none = metres(0.0);
  const UnitSystem units = job.units;
  const JobReservoir& reservoir = job.reservoir;
  const JobTable& table = job.table;
  const auto report = [&](std::string_view vessel, std::string_view key, const std::string& message) {
    const Value value = root[vessel][key];
    reading.problems.add(value, fmt::format("{}: {}", value.path(), message));
  };
  if (reservoir.charge && reservoir.height > none && *reservoir.charge > reservoir.height)
    report("reservoir", "charge",
           fmt::format("{} is more than the inside height of {}", write_length(*reservoir.charge, units),
                       write_length(reservoir.height, units)));
  if (table.floor_height > none && reservoir.height > none && table.floor_height <= reservoir.height)
    report(
        "table", "floor height",
        fmt::format("{} is not over the reservoir, which is {} high inside; heights count from the reservoir's inside "
                    "floor",
                    write_length(table.floor_height, units), write_length(reservoir.height, units)));
  if (table.rim && *table.rim < table.depth)
    report("table", "rim",
           fmt::format("{} is lower than the wanted depth of {}", write_length(*table.rim, units),
                       write_length(table.depth, units)));
  if (reservoir.obstacle_height && reservoir.height > none && *reservoir.obstacle_height >= reservoir.height)
    report("reservoir", "under the riser",
           fmt::format("{} fills the inside height of {}", write_length(*reservoir.obstacle_height, units),
                       write_length(reservoir.height, units)));
}

void check_allowance(JobReading& reading, const Value& root, const Job& job) {
  const JobReservoir& reservoir = job.reservoir;
  if (!reservoir.corrosion_allowance || !(reservoir.sheet.thickness > metres(0.0))) return;
  const Length sheet = reservoir.sheet.least.value_or(reservoir.sheet.thickness);
  if (*reservoir.corrosion_allowance <= sheet * kMostToRust) return;
  const Value value = root["reservoir"]["corrosion allowance"];
  reading.problems.add(value, fmt::format("{}: {} leaves too little of a sheet of {}; allowed is up to half of it",
                                          value.path(), write_thickness(*reservoir.corrosion_allowance, job.units),
                                          write_thickness(sheet, job.units)));
}

void check_strengths(JobReading& reading, const Value& root, const Job& job) {
  const JobReservoir& reservoir = job.reservoir;
  if (!reservoir.ultimate || !(reservoir.sheet.thickness > metres(0.0))) return;
  const auto metal = reservoir::find_sheet_metal(reservoir.sheet.metal, reservoir.sheet.thickness);
  if (!reservoir.yield && !metal) return;
  const Stress yield = reservoir.yield ? *reservoir.yield : metal->yield;
  if (*reservoir.ultimate >= yield) return;
  const Value value = root["reservoir"]["ultimate"];
  reading.problems.add(value,
                       fmt::format("{}: {} is less than the yield of {}", value.path(),
                                   write_stress(*reservoir.ultimate, job.units), write_stress(yield, job.units)));
}

void check_air(JobReading& reading, const Value& root, const Job& job) {
  const JobAir& air = job.air;
  const auto over = [&](std::string_view key, GaugePressure value, GaugePressure highest, std::string_view name) {
    if (value <= highest) return;
    const Value where = root["air"][key];
    reading.problems.add(
        where, fmt::format("{}: {} is more than the {} of {}", where.path(), write_pressure_alone(value, job.units),
                           name, write_pressure_alone(highest, job.units)));
  };
  if (air.set_pressure && air.regulator_range)
    over("set pressure", *air.set_pressure, *air.regulator_range, "regulator range");
  if (air.set_pressure && air.receiver_pressure)
    over("set pressure", *air.set_pressure, *air.receiver_pressure, "receiver pressure");
}

std::vector<std::string_view> port_names(const Job& job) {
  std::vector<std::string_view> names;
  for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
    for (const JobPort& port : *ports) names.push_back(port.name);
  return names;
}

/// A name may stand for one port only, whichever vessel it is on.
void check_port_names(JobReading& reading, const Value& root, const Job&) {
  std::map<std::string, std::string> seen;  // name, vessel
  for (const std::string_view vessel : {"reservoir", "table", "air"}) {
    for (const auto& [name, port] : root[vessel]["ports"].entries()) {
      const auto [place, is_new] = seen.emplace(std::string(name.text()), std::string(vessel));
      // Twice in one map is reported by the document itself.
      if (!is_new && place->second != vessel)
        reading.problems.add(name, fmt::format("{}.ports: the name '{}' is used for a port of the {} already", vessel,
                                               name.text(), place->second));
    }
  }
}

/// A port that could not be read is not unknown: its own mistake is reported.
bool is_named_in_file(const Value& root, std::string_view name) {
  for (const std::string_view vessel : {"reservoir", "table", "air"})
    if (root[vessel]["ports"][name].exists()) return true;
  return false;
}

void check_port_reference(JobReading& reading, const Value& root, const Value& where, const std::string& name,
                          const std::vector<std::string_view>& names) {
  const bool all_vessels = root["reservoir"].is_map() && root["table"].is_map() && root["air"].is_map();
  if (!all_vessels || name.empty() || is_named_in_file(root, name)) return;
  const std::string there_are = names.empty() ? "no ports are given" : "there are " + catalog::either_of(names);
  reading.problems.add(where, fmt::format("{}: no port is called '{}'; {}{}", where.path(), name, there_are,
                                          catalog::did_you_mean(name, names)));
}

bool is_relief_valve(const Catalog& catalog, const JobBranch& branch) {
  return branch.ends_in &&
         catalog.family(catalog.part(branch.ends_in->parts.front()).family).role == catalog::Role::relief_valve;
}

void check_branches(JobReading& reading, const Value& root, const Value& item, const Job& job,
                    const JobConnection& connection, const std::vector<std::string_view>& names,
                    std::map<std::string, std::string>& used) {
  const std::vector<Value> items = item["branches"].is_list() ? item["branches"].items() : std::vector<Value>{};
  std::size_t needs = connection.needs.size();
  for (std::size_t row = 0; row < items.size() && row < connection.branches.size(); ++row) {
    const JobBranch& branch = connection.branches[row];
    needs += branch.needs.size();
    const bool on_reservoir = std::any_of(job.reservoir.ports.begin(), job.reservoir.ports.end(),
                                          [&](const JobPort& port) { return port.name == connection.from; });
    if (is_relief_valve(*reading.catalog, branch) && !on_reservoir)
      reading.problems.add(items[row], fmt::format("{}: a relief valve belongs on the reservoir itself: 'from' must be "
                                                   "one of its ports",
                                                   items[row].path()));
    if (branch.to.empty()) continue;
    const Value where = items[row]["to"];
    check_port_reference(reading, root, where, branch.to, names);
    if (!is_named_in_file(root, branch.to)) continue;  // what is not there is not taken
    const auto [place, is_new] = used.emplace(branch.to, connection.name);
    if (!is_new)
      reading.problems.add(where, fmt::format("{}: the port '{}' is taken by the connection '{}' already", where.path(),
                                              branch.to, place->second));
  }
  if (!items.empty() && needs > chain::kMostNeeds)
    reading.problems.add(item["branches"],
                         fmt::format("{}: {} things are asked for, with those of the whole connection; "
                                     "allowed are at most {}",
                                     item["branches"].path(), needs, chain::kMostNeeds));
}

/// Behind an end of the air supply stands its whole pressure, whatever the run is said to carry; a water main likewise.
void check_service(JobReading& reading, const Value& item, const Job& job, const JobConnection& connection) {
  if (connection.carries != Service::water) return;
  for (const std::string& end : {connection.from, connection.to}) {
    const bool of_the_air =
        std::any_of(job.air.ports.begin(), job.air.ports.end(), [&](const JobPort& port) { return port.name == end; });
    if (of_the_air)
      reading.problems.add(item["carries"],
                           fmt::format("{}: '{}' is an end of the supply under 'air': it carries air. A water main is "
                                       "no supply of it, and is never joined to a closed flat tank: fill through an "
                                       "open port",
                                       item["carries"].path(), end));
  }
}

/// Where no bung is named for the riser, it hangs where a run goes up to the table, and that carries water. Beside a
/// run of water one of air is a run of its own.
void check_carries_up(JobReading& reading, const Value& item, const Job& job, const JobConnection& connection) {
  if (connection.carries != Service::air || job.riser.bung) return;
  const auto on = [](const std::vector<JobPort>& ports, const JobConnection& each) {
    return port_named(ports, each.from) != nullptr || port_named(ports, each.to) != nullptr ||
           std::any_of(each.branches.begin(), each.branches.end(),
                       [&](const JobBranch& branch) { return port_named(ports, branch.to) != nullptr; });
  };
  const auto goes_up = [&](const JobConnection& each) {
    return on(job.reservoir.ports, each) && on(job.table.ports, each);
  };
  if (!goes_up(connection)) return;
  const bool another = std::any_of(job.connections.begin(), job.connections.end(), [&](const JobConnection& each) {
    return each.carries.value_or(Service::water) == Service::water && goes_up(each);
  });
  if (another) return;
  reading.problems.add(item["carries"],
                       fmt::format("{}: a run from the riser's bung to the table carries water; allowed: water",
                                   item["carries"].path()));
}

void check_connections(JobReading& reading, const Value& root, const Job& job) {
  const std::vector<std::string_view> names = port_names(job);
  const std::vector<Value> items = root["connections"].is_list() ? root["connections"].items() : std::vector<Value>{};
  std::map<std::string, std::string> used;  // port, connection
  std::map<std::string, bool> connection_names;
  for (std::size_t i = 0; i < items.size() && i < job.connections.size(); ++i) {
    const JobConnection& connection = job.connections[i];
    for (const auto& [key, port] : {std::pair{"from", connection.from}, {"to", connection.to}}) {
      if (port.empty()) continue;
      const Value where = items[i][key];
      check_port_reference(reading, root, where, port, names);
      if (!is_named_in_file(root, port)) continue;  // what is not there is not taken
      const auto [place, is_new] = used.emplace(port, connection.name);
      if (!is_new)
        reading.problems.add(where, fmt::format("{}: the port '{}' is taken by the connection '{}' already",
                                                where.path(), port, place->second));
    }
    check_service(reading, items[i], job, connection);
    check_carries_up(reading, items[i], job, connection);
    check_branches(reading, root, items[i], job, connection, names, used);
    if (!connection.name.empty() && !connection_names.emplace(connection.name, true).second)
      reading.problems.add(items[i],
                           fmt::format("{}: two connections are called '{}'", items[i].path(), connection.name));
  }
  if (job.riser.bung && !is_named_in_file(root, *job.riser.bung)) {
    std::vector<std::string_view> bungs;
    for (const JobPort& port : job.reservoir.ports) bungs.push_back(port.name);
    check_port_reference(reading, root, root["riser"]["bung"], *job.riser.bung, bungs);
  } else if (job.riser.bung && !root["reservoir"]["ports"][*job.riser.bung].exists()) {
    const Value where = root["riser"]["bung"];
    reading.problems.add(where, fmt::format("{}: '{}' is not a port of the reservoir, where the riser hangs",
                                            where.path(), *job.riser.bung));
  }
}

/// A coupling and a bushing have the thread inside.
void check_bungs(JobReading& reading, const Value& root, const Job& job) {
  for (const JobPort& port : job.reservoir.ports) {
    const bool to_weld = !port.bung && port.welded_in == false;  // it is bought, and so a half coupling
    const bool of_riser = !port.bung && job.riser.bung == port.name;
    if (!to_weld && !of_riser && (!port.bung || *port.bung == reservoir::BungKind::welded_riser)) continue;
    if (reading.catalog->port_type(port.type).end != catalog::End::male) continue;
    const Value where = root["reservoir"]["ports"][port.name];
    reading.problems.add(
        where["bung"].exists() ? where["bung"] : where,
        fmt::format("{}: a coupling's or a bushing's thread is female, and '{}' is male{}", where.path(),
                    reading.catalog->written(port.type),
                    to_weld    ? "; what is to be welded in is a coupling"
                    : of_riser ? "; the riser screws into it, unless it is welded: 'bung: welded riser'"
                               : ""));
  }
}

}  // namespace

void check_job(JobReading& reading, const Value& root, const Job& job) {
  check_bungs(reading, root, job);
  check_heights(reading, root, job);
  check_panel(reading, root, job);
  check_allowance(reading, root, job);
  check_strengths(reading, root, job);
  check_air(reading, root, job);
  check_port_names(reading, root, job);
  check_connections(reading, root, job);
  check_geometry(reading, root, job);
}

}  // namespace riserun::plan
