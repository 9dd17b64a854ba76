// What cannot be built: ports, hoses and ways of the air that contradict the boxes they belong to.
#include "plan/job/job_reading.h"
#include "plan/job/weld_bung.h"
#include "quantity/nearly.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::plan {

using catalog::Value;
using quantity::at_most;

namespace {

const Length kLongestBung = inches(12.0);      // over the wall, where the job gives no length: common practice
const Length kAssumedFreeboard = inches(1.0);  // of a table whose rim is not given, as it is assumed
/// What fittings beside a hose may make up of a gap: barbs, a union and a valve of 2 in pipe (common practice).
const Length kMostOfFittings = inches(18.0);

std::string tape(Length length, const Job& job) { return write_length(length, job.units); }

void refuse(JobReading& reading, const Value& where, const std::string& message) {
  reading.problems.add(where, fmt::format("{}: {}", where.path(), message));
}

/// From where to where the open face of a port of the reservoir can be, above the inside floor.
std::pair<Length, Length> faces_of(const Job& job, const JobPort& port, std::optional<Length> length) {
  const Length height = job.reservoir.height;
  const Length bung = length.value_or(kLongestBung);
  if (!port.place) return {metres(0.0), height + bung};
  switch (*port.place) {
    case Place::lid:
      return {height, height + bung};
    case Place::floor:
      return {metres(0.0), std::min(bung, height)};
    case Place::side:
    case Place::over_rim:
      break;
  }
  return {metres(0.0), height};
}

void check_face(JobReading& reading, const Value& entry, const Job& job, const JobPort& port,
                std::optional<Length> length) {
  const auto [low, high] = faces_of(job, port, length);
  if (*port.face_height >= low && at_most(*port.face_height, high + kTape)) return;
  refuse(reading, entry["face height"],
         fmt::format("the face of a bung {} cannot be {} over the inside floor of a box {} high; allowed is {} to "
                     "{}{}",
                     port.place == Place::lid     ? "in the lid"
                     : port.place == Place::floor ? "in the floor"
                     : port.place == Place::side  ? "in a side"
                                                  : "in a wall",
                     tape(*port.face_height, job), tape(job.reservoir.height, job), tape(low, job), tape(high, job),
                     port.bung_length ? "" : ", or give its 'bung length'"));
}

/// Through the lid goes one body: its two ends are its length apart.
void check_ends_of_bung(JobReading& reading, const Value& entry, const Job& job, const JobPort& port, Length length) {
  const Length top = job.reservoir.height + length - *port.projects;
  const Length off = *port.face_height > top ? *port.face_height - top : top - *port.face_height;
  if (at_most(off, kTape)) return;
  refuse(
      reading, entry["face height"],
      fmt::format("{} does not go with 'projects' of {}: a bung {} long whose lower end is {} under the lid's inside "
                  "has its upper face {} over the inside floor; allowed is that, {} either way, or another "
                  "'projects' or 'bung length'",
                  tape(*port.face_height, job), tape(*port.projects, job), tape(length, job), tape(*port.projects, job),
                  tape(top, job), tape(kTape, job)));
}

/// What carries the thread is welded round its outside: of a coupling its body, else at least the thread itself.
Length outside_of_boss(const Catalog& catalog, const JobPort& port) {
  const catalog::Part* part = weld_bung(catalog, port, port.bung.value_or(reservoir::BungKind::half_coupling));
  if (part != nullptr && part->outside_diameter > metres(0.0)) return part->outside_diameter;
  const catalog::JointSize* size = port.type.valid() ? catalog.joint_size(catalog.port_type(port.type)) : nullptr;
  return size != nullptr ? size->outside_diameter : metres(0.0);
}

/// Beside the seam of floor or lid: the legs of that weld and of the boss's own, each as thick as the sheet, 1/8 in at
/// least and 1/4 in at most (common practice). Nothing beside a bung that is there.
Length room_to_weld(const Job& job, const JobPort& port) {
  if (port.welded_in.value_or(job.reservoir.lid_closed.value_or(false))) return metres(0.0);
  return 2.0 * std::clamp(job.reservoir.sheet.thickness, inches(1.0 / 8.0), inches(1.0 / 4.0));
}

/// A boss in a side ends beside floor and lid, with room for both welds.
void check_side_boss(JobReading& reading, const Value& entry, const Job& job, const JobPort& port) {
  const Length boss = outside_of_boss(*reading.catalog, port);
  const Length exact = boss / 2.0 + room_to_weld(job, port);
  const Length height = job.reservoir.height;
  const Length centre = *port.face_height;
  if (at_most(exact, centre + kTape / 2.0) && at_most(exact, height - centre + kTape / 2.0)) return;
  const Length least = kTape * std::ceil((exact / kTape).value() - quantity::kSameShare);
  const Length most = kTape * std::floor(((height - exact) / kTape).value() + quantity::kSameShare);
  refuse(reading, entry["face height"],
         fmt::format("the centre of '{}' in a side cannot stand {} over the inside floor of a box {} high: its boss is "
                     "{} across and is welded all round, clear of the seams of floor and lid; allowed is {}",
                     port.name, tape(centre, job), tape(height, job), tape(boss, job),
                     at_most(least, most) ? fmt::format("{} to {}", tape(least, job), tape(most, job))
                                          : std::string("a smaller port, or one in the lid")));
}

void check_reservoir_port(JobReading& reading, const Value& entry, const Job& job, const JobPort& port) {
  if (!(job.reservoir.height > metres(0.0))) return;
  const JobPort* of_riser = riser_bung(job);
  const bool is_of_riser = of_riser != nullptr && of_riser->name == port.name;
  const auto kind = port.bung || !is_of_riser ? port.bung : reservoir::BungKind::full_coupling;
  const std::optional<Length> length =
      kind == reservoir::BungKind::welded_riser ? port.bung_length : bung_length(*reading.catalog, port, kind);
  if (port.projects && *port.projects > job.reservoir.height)
    return refuse(reading, entry["projects"],
                  fmt::format("{} is more than the inside height of {}", tape(*port.projects, job),
                              tape(job.reservoir.height, job)));
  if (port.projects && length && !at_most(*port.projects, *length + kTape))
    return refuse(reading, entry["projects"],
                  fmt::format("{} is more than the bung's own length of {}{}", tape(*port.projects, job),
                              tape(*length, job), port.bung_length ? "" : "; or give its 'bung length'"));
  const bool in_lid = port.place == Place::lid || (!port.place && is_of_riser);
  const Length sheet = job.reservoir.sheet.thickness;
  if (in_lid && port.projects && length && !at_most(*port.projects, *length - sheet + kTape))
    return refuse(
        reading, entry["projects"],
        fmt::format("{} leaves the bung's upper end in the lid: {} long, it goes through {} of sheet; at most {}",
                    tape(*port.projects, job), tape(*length, job), tape(sheet, job), tape(*length - sheet, job)));
  if (!port.face_height) return;
  if (in_lid && port.projects && length)
    check_ends_of_bung(reading, entry, job, port, *length);
  else
    check_face(reading, entry, job, port, length);
  if (port.place == Place::side && at_most(*port.face_height, job.reservoir.height))
    check_side_boss(reading, entry, job, port);
}

/// An inlet in the floor or a side opens under the rim, and one in the floor has its face no higher than the floor that
/// it looks down from; a pipe over the rim passes over it.
void check_table_port(JobReading& reading, const Value& entry, const Job& job, const JobPort& port) {
  const JobTable& table = job.table;
  if (!(table.depth > metres(0.0))) return;
  const Length rim = table.rim.value_or(table.depth + kAssumedFreeboard);
  if (port.place == Place::over_rim) {
    if (port.crest && *port.crest < rim)
      refuse(reading, entry["crest"],
             fmt::format("{} is under the rim of {}, which the pipe must pass over", tape(*port.crest, job),
                         tape(rim, job)));
    return;
  }
  const char* wall = port.place == Place::side ? "a side" : "the floor";
  if (port.opens_at && *port.opens_at > rim)
    refuse(reading, entry["opens at"],
           fmt::format("{} is over the rim of {}, where nothing in {} of the table opens; allowed is up to there, or "
                       "'where: over rim'",
                       tape(*port.opens_at, job), tape(rim, job), wall));
  if (!port.face_height || !(table.floor_height > metres(0.0))) return;
  if (port.place.value_or(Place::floor) == Place::floor) {
    if (!at_most(*port.face_height, table.floor_height))
      refuse(reading, entry["face height"],
             fmt::format("{} is over the table's floor, from which '{}' looks down; over the reservoir's inside floor "
                         "that stands {}: allowed is at most that",
                         tape(*port.face_height, job), port.name, tape(table.floor_height, job)));
    return;
  }
  if (*port.face_height > table.floor_height + rim)
    refuse(reading, entry["face height"],
           fmt::format("{} is over the rim, which stands {} over the reservoir's inside floor; allowed is up to there, "
                       "or 'where: over rim'",
                       tape(*port.face_height, job), tape(table.floor_height + rim, job)));
}

void check_ports(JobReading& reading, const Value& root, const Job& job) {
  for (const JobPort& port : job.reservoir.ports)
    check_reservoir_port(reading, root["reservoir"]["ports"][port.name], job, port);
  for (const JobPort& port : job.table.ports) check_table_port(reading, root["table"]["ports"][port.name], job, port);
}

void check_riser_bung(JobReading& reading, const Value& root, const Job& job) {
  const JobPort* bung = riser_bung(job);
  if (bung == nullptr || bung->place.value_or(Place::lid) == Place::lid) return;
  refuse(reading, root["reservoir"]["ports"][bung->name]["where"],
         fmt::format("the riser hangs down through '{}', so it must be in the lid; allowed is lid, or another port as "
                     "'riser: {{bung: ...}}'",
                     bung->name));
}

struct Heights {
  Length low{};
  Length high{};
};

/// Where the upper face of a bung in the lid can be: given, or as far over the lid's inside as its body is long.
Heights faces_of_bung(const Catalog& catalog, const Job& job, const JobPort& port) {
  if (port.face_height) return {*port.face_height, *port.face_height};
  const Length lid = job.reservoir.height;
  const auto length = bung_length(catalog, port, port.bung.value_or(reservoir::BungKind::full_coupling));
  if (length && port.projects) return {lid + *length - *port.projects, lid + *length - *port.projects};
  return {lid, lid + length.value_or(kLongestBung)};
}

/// Where the lower face of a port in the table's floor can be; what hangs from it may come down to any height.
Heights faces_of_inlet(const Job& job, const JobPort& port, Length bung) {
  if (port.face_height) return {*port.face_height, *port.face_height};
  return {bung, std::max(bung, job.table.floor_height)};
}

/// A gap between a bung that looks up and a port that looks down at it is the difference of their heights.
void check_gap(JobReading& reading, const Value& item, const Job& job, const JobConnection& connection) {
  const bool up = port_named(job.reservoir.ports, connection.from) != nullptr;
  const JobPort* bung = port_named(job.reservoir.ports, up ? connection.from : connection.to);
  const JobPort* inlet = port_named(job.table.ports, up ? connection.to : connection.from);
  if (!connection.gap || bung == nullptr || inlet == nullptr) return;
  if (bung->place.value_or(Place::lid) != Place::lid || inlet->place.value_or(Place::floor) != Place::floor) return;
  if (!(job.reservoir.height > metres(0.0)) || !(job.table.floor_height > metres(0.0))) return;
  const Heights of_bung = faces_of_bung(*reading.catalog, job, *bung);
  const Heights of_inlet = faces_of_inlet(job, *inlet, of_bung.high);
  const Length least = of_inlet.low - of_bung.high;
  const Length most = of_inlet.high - of_bung.low;
  const Length off = kTape * 2.0;  // two readings
  if (most <= metres(0.0) || (at_most(least, *connection.gap + off) && at_most(*connection.gap, most + off))) return;
  const auto at = [&](const Heights& heights, bool highest) {
    return heights.low == heights.high ? tape(heights.low, job)
                                       : fmt::format("{} {}", highest ? "at most" : "at least",
                                                     tape(highest ? heights.high : heights.low, job));
  };
  const bool too_wide = *connection.gap > most;
  refuse(
      reading, item["gap"],
      fmt::format("{} does not go with the heights of its ports: over the reservoir's inside floor the face of '{}' "
                  "is {} up and that of '{}' {}, which leaves {}{}; allowed is that, {} either way, or the heights "
                  "as they are ('face height', 'floor height', 'height')",
                  tape(*connection.gap, job), bung->name, at(of_bung, !too_wide), inlet->name, at(of_inlet, too_wide),
                  least == most ? ""
                  : too_wide    ? "at most "
                                : "at least ",
                  tape(too_wide ? most : least, job), tape(off, job)));
}

void check_hose(JobReading& reading, const Value& item, const Job& job, const JobConnection& connection) {
  if (!connection.hose_length || !connection.gap) return;
  const Length way = metres(std::hypot(in_metres(*connection.gap), in_metres(connection.offset.value_or(metres(0.0)))));
  const Length least = std::min(way * 0.5, way - kMostOfFittings);
  if (*connection.hose_length >= least) return;
  refuse(
      reading, item["hose length"],
      fmt::format("{} is far too short for the {} between the two faces; allowed is from {} on, or no 'hose length', "
                  "and it is cut to the gap",
                  tape(*connection.hose_length, job), tape(way, job), tape(least, job)));
}

std::vector<std::string> ends_of(const JobConnection& connection) {
  std::vector<std::string> ends;
  if (!connection.to.empty()) ends.push_back(connection.to);
  for (const JobBranch& branch : connection.branches)
    if (!branch.to.empty()) ends.push_back(branch.to);
  return ends;
}

/// Air goes from the supply into the reservoir; into the table it lifts nothing.
void check_air_reaches(JobReading& reading, const Value& item, const Job& job, const JobConnection& connection) {
  std::vector<std::string> ends = ends_of(connection);
  if (ends.empty()) return;
  ends.push_back(connection.from);
  const auto any_of = [&](const std::vector<JobPort>& ports) {
    return std::any_of(ends.begin(), ends.end(),
                       [&](const std::string& name) { return port_named(ports, name) != nullptr; });
  };
  if (!any_of(job.air.ports) || !any_of(job.table.ports) || any_of(job.reservoir.ports)) return;
  const Value to = item["to"];
  refuse(reading, to.exists() ? to : item,
         "air from the supply goes to the table here and never reaches the reservoir; one end must be a port of the "
         "reservoir");
}

/// Water runs through the riser, and nothing else.
void check_riser_carries_water(JobReading& reading, const Value& item, const Job& job,
                               const JobConnection& connection) {
  if (!job.riser.bung) return;
  std::vector<std::string> ends = ends_of(connection);
  ends.push_back(connection.from);
  const auto is = [&](const std::string& name) { return name == *job.riser.bung; };
  if (std::none_of(ends.begin(), ends.end(), is)) return;
  const auto from_supply = [&](const std::string& name) { return port_named(job.air.ports, name) != nullptr; };
  const bool air =
      connection.carries ? *connection.carries == Service::air : std::any_of(ends.begin(), ends.end(), from_supply);
  if (!air) return;
  const Value carries = item["carries"];
  refuse(reading, carries.exists() ? carries : item,
         fmt::format("the riser hangs in '{}', which carries water; air needs a port of its own", *job.riser.bung));
}

/// A bung stands within the lid, and only one in the lid is placed on it.
void check_spots(JobReading& reading, const Value& root, const Job& job) {
  const JobReservoir& reservoir = job.reservoir;
  for (const JobPort& port : reservoir.ports) {
    if (!port.at) continue;
    const Value at = root["reservoir"]["ports"][port.name]["at"];
    if (port.place && *port.place != Place::lid)
      refuse(reading, at, "it is the place of a bung in the lid, and this one is elsewhere");
    const std::vector<Value> both = at.items();
    const auto check = [&](std::size_t which, Length is, Length inside, const char* measure) {
      if (!(inside > metres(0.0)) || at_most(is, inside)) return;
      refuse(reading, both[which],
             fmt::format("{} is off the lid, whose inside {} is {}", tape(is, job), measure, tape(inside, job)));
    };
    check(0, port.at->from_left, reservoir.length, "length");
    check(1, port.at->from_front, reservoir.width, "width");
  }
}

}  // namespace

void check_geometry(JobReading& reading, const Value& root, const Job& job) {
  check_ports(reading, root, job);
  check_spots(reading, root, job);
  check_riser_bung(reading, root, job);
  const std::vector<Value> items = root["connections"].is_list() ? root["connections"].items() : std::vector<Value>{};
  for (std::size_t i = 0; i < items.size() && i < job.connections.size(); ++i) {
    check_gap(reading, items[i], job, job.connections[i]);
    check_hose(reading, items[i], job, job.connections[i]);
    check_air_reaches(reading, items[i], job, job.connections[i]);
    check_riser_carries_water(reading, items[i], job, job.connections[i]);
  }
}

}  // namespace riserun::plan
