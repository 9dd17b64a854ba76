// Reads the connections of a job.
#include "catalog/words/avoided_parts.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;
using chain::Freedom;

namespace {

/// A gauge, a plug, a valve whose far side stays open.
bool can_end_a_run(const catalog::Part& part) { return part.ports.size() == 1 || part.ports.size() == 2; }

void read_held(JobReading& reading, const Value& value, JobConnection& connection) {
  if (!value.exists()) return;
  Fields fields(value, {"from", "to"}, reading.problems);
  if (!fields.valid()) return;
  const auto freedom = [&fields](std::string_view key) {
    return fields.choice<Freedom>(fields.find(key), {{"fixed", Freedom::fixed},
                                                     {"sliding", Freedom::sliding},
                                                     {"spinning", Freedom::spinning},
                                                     {"loose", Freedom::loose}});
  };
  connection.from_freedom = freedom("from");
  connection.to_freedom = freedom("to");
}

}  // namespace

void read_needs(JobReading& reading, Fields& fields, std::vector<chain::Need>& wanted,
                std::vector<chain::Avoidance>& avoided) {
  const Value needs = fields.find("need");
  if (needs.exists()) {
    for (const Value& words : catalog::read_texts(needs, reading.problems)) {
      std::vector<PartId> parts = read_parts(reading, words);
      if (!parts.empty()) wanted.push_back({std::string(words.text()), std::move(parts)});
    }
    if (wanted.size() > 8)
      reading.problems.add(
          needs, fmt::format("{}: {} things are asked for; allowed are at most 8", needs.path(), wanted.size()));
  }
  const Value avoid = fields.find("avoid");
  if (!avoid.exists()) return;
  for (const Value& words : catalog::read_texts(avoid, reading.problems)) {
    std::vector<PartId> parts = read_avoided_parts(reading, words);
    if (parts.empty()) continue;
    avoided.push_back({std::string(catalog::without_just(words.text())), std::move(parts)});
  }
}

std::optional<EndDevice> read_end_device(JobReading& reading, const Value& words) {
  std::vector<PartId> devices;
  for (const PartId part : read_parts(reading, words))
    if (can_end_a_run(reading.catalog->part(part))) devices.push_back(part);
  if (!devices.empty()) return EndDevice{std::string(words.text()), std::move(devices)};
  if (words.is_text() && !words.text().empty())
    reading.problems.add(words, fmt::format("{}: no part with one or two ports matches '{}', so nothing can end in it",
                                            words.path(), words.text()));
  return std::nullopt;
}

namespace {

void read_far_end(JobReading& reading, Fields& fields, JobConnection& connection) {
  const Value to = fields.find("to");
  const Value ends_in = fields.find("ends in");
  if (fields.find("branches").exists()) return read_branches(reading, fields, connection);
  if (to.exists() && ends_in.exists())
    reading.problems.add(ends_in, fmt::format("{}: a connection has 'to' or 'ends in', not both", ends_in.path()));
  if (!to.exists() && !ends_in.exists())
    reading.problems.add(
        fields.map(),
        fmt::format("{}: the far end is missing: 'to' names a port, 'ends in' a device, 'branches' several ends",
                    fields.map().path()));
  if (to.exists()) connection.to = fields.need_text("to");
  if (ends_in.exists()) connection.ends_in = read_end_device(reading, ends_in);
}

void read_limits(Fields& fields, JobConnection& connection) {
  connection.gap = fields.find_with("gap", ranged(read_length, metres(0.0), feet(60.0)));
  connection.offset = fields.find_with("offset", ranged(read_length, metres(0.0), feet(60.0)));
  connection.hose_length = fields.find_with("hose length", ranged(read_length, inches(1.0), feet(100.0)));
  connection.rating = fields.find_with("rating", ranged(read_pressure, psig(0.0), psig(3000.0)));
  connection.room = fields.find_with("room", ranged(read_length, inches(0.25), inches(120.0)));
  connection.smallest_bore = fields.find_with("smallest bore", ranged(read_length, inches(0.05), inches(12.0)));
  connection.most_parts = fields.find_with("most parts", ranged(read_count, 0, 40));
  connection.most_bushings = fields.find_with("most bushings", ranged(read_count, 0, 40));
  connection.needs_in_order = fields.flag_or("in order", false);
  connection.hottest =
      fields.find_with("hottest", ranged(read_temperature, degrees_fahrenheit(32.0), degrees_fahrenheit(500.0)));
  if (fields.map()["vacuum"].exists()) connection.vacuum = fields.flag_or("vacuum", true);
  connection.special_order = fields.flag_or("special order", false);
  connection.galvanic = fields
                            .choice<chain::Galvanic>(fields.find("galvanic"), {{"warn", chain::Galvanic::warn},
                                                                               {"avoid", chain::Galvanic::avoid}})
                            .value_or(chain::Galvanic::warn);
}

JobConnection read_connection(JobReading& reading, const Value& value) {
  JobConnection connection;
  Fields fields(
      value,
      {"name",          "from",     "to",      "ends in",     "carries",       "need",          "avoid",   "held",
       "order",         "gap",      "offset",  "hose length", "rating",        "smallest bore", "room",    "most parts",
       "most bushings", "in order", "hottest", "vacuum",      "special order", "galvanic",      "branches"},
      reading.problems);
  if (!fields.valid()) return connection;
  connection.from = fields.need_text("from");
  read_far_end(reading, fields, connection);
  const std::string far_end = !connection.branches.empty() ? fmt::format("{} branches", connection.branches.size())
                              : connection.ends_in         ? connection.ends_in->words
                                                           : connection.to;
  connection.name = fields.text_or("name", connection.from + " to " + far_end);
  connection.carries =
      fields.choice<Service>(fields.find("carries"), {{"water", Service::water}, {"air", Service::air}});
  read_needs(reading, fields, connection.needs, connection.avoid);
  read_held(reading, fields.find("held"), connection);
  connection.order = read_order(fields, "order");
  read_limits(fields, connection);
  return connection;
}

}  // namespace

void read_connections(JobReading& reading, const Value& value, Job& job) {
  for (const Value& item : catalog::read_list(value, reading.problems))
    job.connections.push_back(read_connection(reading, item));
}

}  // namespace riserun::plan
