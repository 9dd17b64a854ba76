#include "plan/advice/change.h"

#include "plan/advice/lines.h"
#include "plan/advice/restricted.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <stdexcept>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::plan {

namespace {

using quantity::Value;

struct Setter {
  std::string_view key;
  void (*set)(Job& job, const Value& value);
};

bool is_yes(const Value& value) { return std::get<std::string>(value) == "yes"; }

/// Every key that a mend changes.
constexpr std::array kSetters = {
    Setter{"air.set pressure",
           [](Job& job, const Value& value) { job.air.set_pressure = std::get<GaugePressure>(value); }},
    Setter{"air.regulator range",
           [](Job& job, const Value& value) { job.air.regulator_range = std::get<GaugePressure>(value); }},
    Setter{"air.regulator repeatability",
           [](Job& job, const Value& value) { job.air.regulator_repeatability = std::get<PressureDifference>(value); }},
    Setter{"air.lock up", [](Job& job, const Value& value) { job.air.lock_up = std::get<GaugePressure>(value); }},
    Setter{"air.restrictor", [](Job& job, const Value& value) { job.air.restrictor = std::get<Length>(value); }},
    Setter{"air.check valve opens at", [](Job& job, const Value& /*left out*/) { job.air.check_valve.reset(); }},
    Setter{"air.receiver", [](Job& job, const Value& value) { job.air.receiver = std::get<Volume>(value); }},
    Setter{"air.delivery", [](Job& job, const Value& value) { job.air.delivery = std::get<VolumeFlow>(value); }},
    Setter{"relief valve.tolerance",
           [](Job& job, const Value& value) { job.relief_valve.tolerance = std::get<PressureDifference>(value); }},
    Setter{"relief valve.rise",
           [](Job& job, const Value& value) { job.relief_valve.rise = std::get<PressureDifference>(value); }},
    Setter{"riser.headroom", [](Job& job, const Value& value) { job.riser.headroom = std::get<Length>(value); }},
    Setter{"riser.clearance", [](Job& job, const Value& value) { job.riser.clearance = std::get<Length>(value); }},
    Setter{"riser.foot valve", [](Job& job, const Value& value) { job.riser.foot_valve = is_yes(value); }},
    Setter{"reservoir.charge",
           [](Job& job, const Value& value) {
             if (const auto* charge = std::get_if<Length>(&value))
               job.reservoir.charge = *charge;
             else
               job.reservoir.charge.reset();
           }},
    Setter{"reservoir.lid",
           [](Job& job, const Value& value) {
             const bool was_closed = job.reservoir.lid_closed.value_or(false);
             job.reservoir.lid_closed = std::get<std::string>(value) == "welded";
             // What was in the closed box stays in it.
             for (JobPort& port : job.reservoir.ports)
               if (!port.welded_in && was_closed && port.bung != reservoir::BungKind::double_tapped_bushing)
                 port.welded_in = true;
           }},
    Setter{"reservoir.yield", [](Job& job, const Value& /*left out*/) { job.reservoir.yield.reset(); }},
    Setter{"reservoir.supports.passages",
           [](Job& job, const Value& value) { job.reservoir.supports.passages = is_yes(value); }},
    Setter{"table.rim", [](Job& job, const Value& value) { job.table.rim = std::get<Length>(value); }},
    Setter{"table.depth", [](Job& job, const Value& value) { job.table.depth = std::get<Length>(value); }},
    Setter{"test pressure",
           [](Job& job, const Value& value) {
             if (const auto* pressure = std::get_if<GaugePressure>(&value))
               job.test_pressure = *pressure;
             else
               job.test_pressure.reset();
           }},
    Setter{"liquid", [](Job& job, const Value& value) { job.liquid = {std::get<std::string>(value), false}; }},
    Setter{"vent.stays open", [](Job& job, const Value& value) { job.vent.stays_open = is_yes(value); }},
    Setter{"vent.purged", [](Job& job, const Value& value) { job.vent.purged = is_yes(value); }},
};

/// A female thread of the part's size: its own, or the one that takes it.
PortTypeId port_for(const Catalog& catalog, PartId part) {
  const PortTypeId own = catalog.part(part).ports[0].type;
  for (const catalog::Mate& mate : catalog.mates(own))
    if (catalog.port_type(mate.other).end == catalog::End::female) return mate.other;
  return own;
}

void add_device(const Catalog& catalog, Job& job, const std::string& port, PartId part) {
  const std::string& called = catalog.part(part).name;
  JobConnection connection;
  connection.name = called;
  connection.from = port;
  connection.ends_in = EndDevice{called, {part}};
  connection.carries = Service::air;
  connection.special_order = !catalog.part(part).stocked;
  job.connections.push_back(std::move(connection));
}

void add_connection(const Catalog& catalog, Job& job, PartId part) {
  JobPort port;
  port.name = "a bung for the " + catalog.part(part).name;
  port.type = port_for(catalog, part);
  port.place = Place::lid;
  port.bung = reservoir::BungKind::half_coupling;
  add_device(catalog, job, port.name, part);
  job.reservoir.ports.push_back(std::move(port));
}

/// The connection ends in the part and nothing else, on a bung of the part's own size.
void give_device(const Catalog& catalog, Job& job, const Value& name, PartId part) {
  for (JobConnection& connection : job.connections) {
    if (connection.name != std::get<std::string>(name)) continue;
    connection.ends_in = EndDevice{catalog.part(part).name, {part}};
    connection.needs.clear();
    connection.take.reset();
    connection.special_order = true;
    for (JobPort& port : job.reservoir.ports) {
      if (port.name != connection.from) continue;
      port.type = port_for(catalog, part);
      port.bung_part.reset();
      port.bung_length.reset();
    }
  }
}

/// The branch ends in the part, behind what it has on its way already.
void give_branch_device(const Catalog& catalog, Job& job, const Value& name, PartId part) {
  for (JobConnection& connection : job.connections)
    for (JobBranch& branch : connection.branches) {
      if (branch.name != std::get<std::string>(name) || !branch.ends_in) continue;
      branch.ends_in = EndDevice{catalog.part(part).name, {part}};
      branch.special_order = true;
    }
}

/// A part's mark, as it is printed in either system of units.
bool is_marked(GaugePressure mark, GaugePressure as_printed) {
  constexpr double kShare = 0.01;
  return std::abs(in_pascals(mark) - in_pascals(as_printed)) <= kShare * in_pascals(mark);
}

/// The same valve with another spring: of its family, metal and thread. What is no relief valve stays.
/// @return it was one, and such a one is sold
bool set_to_open_at(const Catalog& catalog, std::optional<EndDevice>& device, GaugePressure opens) {
  if (!device) return false;
  std::vector<PartId> parts;
  for (const PartId id : device->parts) {
    const catalog::Part& old = catalog.part(id);
    if (catalog.family(old.family).role != catalog::Role::relief_valve) return false;
    for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
      const catalog::Part& part = catalog.part({row});
      if (part.family == old.family && part.material == old.material && part.ports[0].type == old.ports[0].type &&
          part.opens_at && is_marked(*part.opens_at, opens))
        parts.push_back({row});
    }
  }
  if (parts.empty()) return false;
  device->parts = std::move(parts);
  return true;
}

void set_relief_valves(const Catalog& catalog, Job& job, GaugePressure opens) {
  for (JobConnection& connection : job.connections) {
    if (set_to_open_at(catalog, connection.ends_in, opens)) connection.special_order = true;
    for (JobBranch& branch : connection.branches)
      if (set_to_open_at(catalog, branch.ends_in, opens)) branch.special_order = true;
  }
}

/// Of several regulators the last one before the reservoir sets its pressure; the others are first stages.
/// @param from_supply  the needs are told from the supply on
/// @return the needs name a regulator, and one of that range is sold
bool set_to_range(const Catalog& catalog, std::vector<chain::Need>& needs, GaugePressure range, bool from_supply) {
  const auto is_regulator = [&](PartId id) {
    return catalog.family(catalog.part(id).family).role == catalog::Role::regulator;
  };
  std::vector<PartId> parts;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const auto& top = catalog.part({row}).full_scale;
    if (is_regulator({row}) && top && is_marked(*top, range)) parts.push_back({row});
  }
  if (parts.empty()) return false;
  const auto is_one = [&](const chain::Need& need) {
    return std::all_of(need.parts.begin(), need.parts.end(), is_regulator);
  };
  auto need = std::find_if(needs.begin(), needs.end(), is_one);
  if (from_supply) {
    const auto last = std::find_if(needs.rbegin(), needs.rend(), is_one);
    need = last == needs.rend() ? needs.end() : std::prev(last.base());
  }
  if (need == needs.end()) return false;
  need->parts = std::move(parts);
  return true;
}

void set_regulators(const Catalog& catalog, Job& job, GaugePressure range) {
  for (JobConnection& connection : job.connections) {
    const bool from_supply = port_named(job.air.ports, connection.from) != nullptr;
    bool any = set_to_range(catalog, connection.needs, range, from_supply);
    for (JobBranch& branch : connection.branches) any = set_to_range(catalog, branch.needs, range, from_supply) || any;
    connection.special_order = connection.special_order || any;
  }
}

/// Plate of that thickness, of the same metal: no gauge, so its least is what it is called.
void set_sheet(Job& job, Length thickness) {
  job.reservoir.sheet.thickness = thickness;
  job.reservoir.sheet.least.reset();
}

JobPort* port_called(std::vector<JobPort>& ports, const Value& name) {
  const auto port = std::find_if(ports.begin(), ports.end(),
                                 [&](const JobPort& each) { return each.name == std::get<std::string>(name); });
  return port != ports.end() ? &*port : nullptr;
}

void put_into_lid(Job& job, const Value& name) {
  JobPort* port = port_called(job.reservoir.ports, name);
  if (port == nullptr) return;
  port->place = Place::lid;
  port->face_height.reset();
}

void put_into_floor(Job& job, const Value& name) {
  JobPort* port = port_called(job.table.ports, name);
  if (port == nullptr) return;
  port->place = Place::floor;
  // From the floor it looks down, so the face that it had above that is no longer its own.
  if (port->face_height && *port->face_height > job.table.floor_height) port->face_height.reset();
  port->opens_at.reset();
  port->crest.reset();
}

void raise_table(Job& job, Length by) {
  job.table.floor_height += by;
  for (JobPort& port : job.table.ports)
    if (port.face_height) *port.face_height += by;
}

void raise_lid(Job& job, Length height) {
  const Length by = height - job.reservoir.height;
  job.reservoir.height = height;
  for (JobPort& port : job.reservoir.ports)
    if (port.place == Place::lid && port.face_height) *port.face_height += by;
}

void order_specially(Job& job, const Value& name) {
  for (JobConnection& connection : job.connections)
    if (connection.name == std::get<std::string>(name)) connection.special_order = true;
}

void leave_check_out(const Catalog& catalog, Job& job, const Value& name) {
  for (JobConnection& connection : job.connections)
    if (connection.name == std::get<std::string>(name))
      std::erase_if(connection.needs, [&](const chain::Need& need) {
        return std::all_of(need.parts.begin(), need.parts.end(), [&](PartId part) {
          return catalog.family(catalog.part(part).family).role == catalog::Role::check_valve;
        });
      });
}

/// A hose with its length.
void leave_need_out(const Catalog& catalog, Job& job, const Value& name, PartId part) {
  for (JobConnection& connection : job.connections) {
    if (connection.name == std::get<std::string>(name))
      std::erase_if(connection.needs, [&](const chain::Need& need) {
        return std::find(need.parts.begin(), need.parts.end(), part) != need.parts.end();
      });
    if (connection.name == std::get<std::string>(name) && catalog.part(part).flexible) connection.hose_length.reset();
  }
}

void put_into_bushing(Job& job, const Value& name) {
  JobPort* port = port_called(job.reservoir.ports, name);
  if (port == nullptr) return;
  port->bung = reservoir::BungKind::double_tapped_bushing;
  port->bung_part.reset();
  port->bung_length.reset();
}

void move_bung(Job& job, const Value& name, const LidSpot& spot) {
  if (JobPort* port = port_called(job.reservoir.ports, name)) port->at = spot;
}

/// @return it is one of the changes that no key of a job says
bool change_without_key(const Catalog& catalog, Job& job, const Change& change) {
  if (change.part && change.key == kDeviceOf)
    give_device(catalog, job, change.value, *change.part);
  else if (change.part && change.key == kDeviceOfBranch)
    give_branch_device(catalog, job, change.value, *change.part);
  else if (change.part && change.key == kDeviceOn)
    add_device(catalog, job, std::get<std::string>(change.value), *change.part);
  else if (change.part && change.key == kNeedOf)
    add_need(catalog, job, change.value, *change.part);
  else if (change.part && change.key == kNeedLeftOut)
    leave_need_out(catalog, job, change.value, *change.part);
  else if (change.part)
    add_connection(catalog, job, *change.part);
  else if (change.supports)
    job.reservoir.supports.layout = change.supports;
  else if (change.spot)
    move_bung(job, change.value, *change.spot);
  else if (change.key == kRegulatorOfRange)
    set_regulators(catalog, job, std::get<GaugePressure>(change.value));
  else if (change.key == kReliefSetting)
    set_relief_valves(catalog, job, std::get<GaugePressure>(change.value));
  else if (change.key == kRestrictorInRun)
    restrict_before_regulators(catalog, job, std::get<Length>(change.value));
  else if (change.key == kReservoirHeight)
    raise_lid(job, std::get<Length>(change.value));
  else if (change.key == kSheetThickness)
    set_sheet(job, std::get<Length>(change.value));
  else if (change.key == kPortIntoLid)
    put_into_lid(job, change.value);
  else if (change.key == kPortIntoFloor)
    put_into_floor(job, change.value);
  else if (change.key == kTableHigher)
    raise_table(job, std::get<Length>(change.value));
  else if (change.key == kSpecialOrderIn)
    order_specially(job, change.value);
  else if (change.key == kCheckLeftOut)
    leave_check_out(catalog, job, change.value);
  else if (change.key == kLineLeftOut)
    leave_line_out(catalog, job, std::get<std::string>(change.value));
  else if (change.key == kRiserInBushing)
    put_into_bushing(job, change.value);
  else
    return false;
  return true;
}

}  // namespace

Job changed(const Catalog& catalog, Job job, const Changes& changes) {
  for (const Change& change : changes) {
    if (change_without_key(catalog, job, change)) continue;
    bool known = false;
    for (const Setter& setter : kSetters) {
      if (setter.key != change.key) continue;
      setter.set(job, change.value);
      known = true;
    }
    if (!known) throw std::logic_error("no mend changes the key " + change.key);
  }
  return job;
}

}  // namespace riserun::plan
