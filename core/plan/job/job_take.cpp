// Reads the run that was chosen for a connection.
#include "plan/job/job_reading.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;
using chain::TakenPart;

namespace {

std::optional<PartId> read_part_id(JobReading& reading, const Value& value) {
  const std::optional<std::string_view> id = catalog::read_text(value, reading.problems);
  if (!id) return std::nullopt;
  if (const auto part = reading.catalog->find_part(*id)) return part;
  std::vector<std::string_view> ids;
  for (const catalog::Part& part : reading.catalog->parts()) ids.push_back(part.id);
  reading.problems.add(value, fmt::format("{}: no part of the catalog has the id '{}'{}", value.path(), *id,
                                          catalog::did_you_mean(*id, ids)));
  return std::nullopt;
}

/// `{part: tee/black-iron/1, enter: 1, leave: 3}`
std::optional<TakenPart> read_with_ports(JobReading& reading, const Value& value) {
  Fields fields(value, {"part", "enter", "leave"}, reading.problems);
  if (!fields.valid()) return std::nullopt;
  const Value id = fields.need("part");
  const std::optional<PartId> part = id.exists() ? read_part_id(reading, id) : std::nullopt;
  const auto enter = fields.need_with("enter", ranged(read_count, 1, 8));
  const auto leave = fields.need_with("leave", ranged(read_count, 1, 8));
  if (!part || !enter || !leave) return std::nullopt;
  const int ports = static_cast<int>(reading.catalog->part(*part).ports.size());
  if (*enter == *leave || *enter > ports || *leave > ports) {
    reading.problems.add(value, fmt::format("{}: '{}' has {} port{}: 'enter' and 'leave' are two of them", value.path(),
                                            reading.catalog->part(*part).name, ports, ports == 1 ? "" : "s"));
    return std::nullopt;
  }
  return TakenPart{*part,
                   TakenPart::Through{static_cast<std::uint8_t>(*enter - 1), static_cast<std::uint8_t>(*leave - 1)}};
}

}  // namespace

std::optional<std::vector<TakenPart>> read_take(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  const std::size_t before = reading.problems.size();
  std::vector<TakenPart> taken;
  for (const Value& row : catalog::read_list(value, reading.problems)) {
    if (row.is_map()) {
      if (const auto part = read_with_ports(reading, row)) taken.push_back(*part);
    } else if (const auto part = read_part_id(reading, row)) {
      taken.push_back({*part});
    }
  }
  if (reading.problems.size() > before) return std::nullopt;
  return taken;
}

}  // namespace riserun::plan
