// Reads the ports of a job's vessels and the words in it that name materials and parts.
#include "catalog/words/avoided_parts.h"
#include "catalog/words/part_search.h"
#include "catalog/words/port_notation.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;
using reservoir::BungKind;

namespace {

/// `1 FNPT`, `1 FNPT aluminium`
std::optional<catalog::MadePort> read_made_port(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return std::nullopt;
  const auto port = reading.words().ports().read_made(*text);
  if (const auto* made = std::get_if<catalog::MadePort>(&port)) return *made;
  const auto& error = std::get<catalog::NotationError>(port);
  reading.problems.add(value, value.path() + ": " + error.message, error.offset, quantity::mistake::kUnknownPort);
  return std::nullopt;
}

/// `[6 in, 5 in]`: from the left and from the front.
std::optional<LidSpot> read_lid_spot(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  const std::vector<Value> both = value.is_list() ? value.items() : std::vector<Value>{};
  if (both.size() != 2) {
    reading.problems.add(value, value.path() +
                                    ": expected two distances, from the left and from the front, as in "
                                    "'[6 in, 5 in]'");
    return std::nullopt;
  }
  const auto distance = ranged(read_length, metres(0.0), feet(40.0));
  const auto from_left = catalog::read_with(both[0], distance, reading.problems);
  const auto from_front = catalog::read_with(both[1], distance, reading.problems);
  if (!from_left || !from_front) return std::nullopt;
  return LidSpot{*from_left, *from_front};
}

void read_reservoir_port(JobReading& reading, Fields& fields, JobPort& port) {
  port.place =
      fields.choice<Place>(fields.find("where"), {{"lid", Place::lid}, {"side", Place::side}, {"floor", Place::floor}});
  port.bung =
      fields.choice<BungKind>(fields.find("bung"), {{"full coupling", BungKind::full_coupling},
                                                    {"half coupling", BungKind::half_coupling},
                                                    {"welded riser", BungKind::welded_riser},
                                                    {"double-tapped bushing", BungKind::double_tapped_bushing}});
  if (fields.map()["welded in"].exists()) port.welded_in = fields.flag_or("welded in", true);
  port.bung_length = fields.find_with("bung length", ranged(read_length, inches(0.25), inches(24.0)));
  port.projects = fields.find_with("projects", ranged(read_length, metres(0.0), inches(24.0)));
  port.face_height = fields.find_with("face height", ranged(read_length, metres(0.0), feet(60.0)));
  port.at = read_lid_spot(reading, fields.find("at"));
}

void read_table_port(Fields& fields, JobPort& port) {
  port.place = fields.choice<Place>(fields.find("where"),
                                    {{"floor", Place::floor}, {"side", Place::side}, {"over rim", Place::over_rim}});
  port.opens_at = fields.find_with("opens at", ranged(read_length, metres(0.0), feet(20.0)));
  port.crest = fields.find_with("crest", ranged(read_length, metres(0.0), feet(20.0)));
  port.face_height = fields.find_with("face height", ranged(read_length, metres(0.0), feet(60.0)));
}

/// A nut is a swivel where its thread, cut into a wall, would be another kind: hose thread is cut into both.
bool is_on_a_nut(const Catalog& catalog, PortTypeId type) {
  const catalog::PortType& port = catalog.port_type(type);
  return port.end == catalog::End::female && catalog.kind(port.kind).female_shape == catalog::EndShape::nut &&
         catalog.kind(port.kind).female_notation.find("swivel") != std::string::npos;
}

Fields port_fields(JobReading& reading, const Value& value, Vessel vessel) {
  switch (vessel) {
    case Vessel::reservoir:
      return Fields(value,
                    {"port", "material", "where", "bung", "bung part", "welded in", "bung length", "projects",
                     "face height", "at"},
                    reading.problems);
    case Vessel::table:
      return Fields(value, {"port", "material", "where", "opens at", "crest", "face height"}, reading.problems);
    case Vessel::air:
      break;
  }
  return Fields(value, {"port", "material"}, reading.problems);
}

/// `1 FNPT`, or a map with the port and where it sits.
std::optional<JobPort> read_port_entry(JobReading& reading, const Value& name, const Value& value, Vessel vessel) {
  JobPort port;
  port.name = std::string(name.text());
  if (value.is_text()) {
    const auto made = read_made_port(reading, value);
    if (!made) return std::nullopt;
    port.type = made->type;
    port.material = made->material;
    return port;
  }
  Fields fields = port_fields(reading, value, vessel);
  if (!fields.valid()) return std::nullopt;
  const auto made = read_made_port(reading, fields.need("port"));
  port.material = read_material(reading, fields.find("material"));
  if (made && made->material) {
    if (port.material && port.material != made->material)
      reading.problems.add(fields.map()["material"],
                           fields.map()["material"].path() + ": the port says another material");
    port.material = made->material;
  }
  if (made && vessel == Vessel::reservoir && is_on_a_nut(*reading.catalog, made->type))
    reading.problems.add(fields.map()["port"],
                         fmt::format("{}: {} is on a nut that turns, and no wall of a reservoir carries one; a bung or "
                                     "a tapped hole is FNPT, or another thread that stands still",
                                     fields.map()["port"].path(), reading.catalog->written(made->type)));
  if (vessel == Vessel::reservoir) read_reservoir_port(reading, fields, port);
  if (const Value part = fields.map()["bung part"]; vessel == Vessel::reservoir && part.exists())
    port.bung_part = read_one_part(reading, part);
  if (vessel == Vessel::table) read_table_port(fields, port);
  if (!made) return std::nullopt;
  port.type = made->type;
  return port;
}

}  // namespace

std::vector<JobPort> read_ports(JobReading& reading, const Value& value, Vessel vessel) {
  std::vector<JobPort> ports;
  if (!value.exists()) return ports;
  if (!value.is_map()) {
    reading.problems.add(value,
                         fmt::format("{}: expected names with a port each, as in 'drain: 1 FNPT'", value.path()));
    return ports;
  }
  for (const auto& [name, entry] : value.entries())
    if (auto port = read_port_entry(reading, name, entry, vessel)) ports.push_back(std::move(*port));
  return ports;
}

std::optional<MaterialId> read_material(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return std::nullopt;
  const auto material = reading.catalog->find_material(*text);
  if (material) return material;
  std::vector<std::string_view> names;
  for (const catalog::Material& known : reading.catalog->materials()) names.push_back(known.name);
  reading.problems.add(value, fmt::format("{}: no material is called '{}'; there are {}{}", value.path(), *text,
                                          catalog::either_of(names), catalog::did_you_mean(*text, names)));
  return std::nullopt;
}

std::vector<PartId> read_parts(JobReading& reading, const Value& value) {
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return {};
  auto parts = reading.words().find_called(*text);
  if (auto* found = std::get_if<std::vector<PartId>>(&parts)) return std::move(*found);
  const auto& error = std::get<catalog::NotationError>(parts);
  reading.problems.add(value, value.path() + ": " + error.message, error.offset, error.code);
  return {};
}

std::vector<PartId> read_avoided_parts(JobReading& reading, const Value& value) {
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return {};
  std::vector<PartId> parts = catalog::find_avoided_parts(reading.words(), *text);
  if (!parts.empty()) return parts;
  const catalog::NotationError error = catalog::why_no_avoided_parts(reading.words(), *text);
  reading.problems.add(value, value.path() + ": " + error.message, error.offset, error.code);
  return {};
}

std::optional<PartId> read_one_part(JobReading& reading, const Value& value) {
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return std::nullopt;
  const auto part = reading.words().find_one(*text);
  if (const PartId* found = std::get_if<PartId>(&part)) return *found;
  const auto& error = std::get<catalog::NotationError>(part);
  reading.problems.add(value, value.path() + ": " + error.message, error.offset, error.code);
  return std::nullopt;
}

}  // namespace riserun::plan
