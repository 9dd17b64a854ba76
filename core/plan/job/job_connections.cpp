// Reads the connections of a job.
#include "catalog/words/avoided_parts.h"
#include "chain/ask/needs.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;
using chain::askable;
using chain::Askable;
using chain::AskedKind;
using chain::AskedOf;
using chain::Freedom;

namespace {

// Far more than a bench has; each connection is a search of its own.
constexpr std::size_t kMostConnections = 512;
constexpr std::size_t kMostAvoided = 256;

/// @param rules  RunRules, WayRules or a Span
template <class Rules>
bool read_value(JobReading& reading, Rules& rules, const Askable& row, const Value& value) {
  if (!catalog::read_text(value, reading.problems)) return false;
  const auto wrong = chain::read_into(rules, row, value.written());
  if (wrong) reading.problems.add(value, value.path() + ": " + wrong->message, wrong->offset);
  return !wrong;
}

template <class Rules>
void read_rows(JobReading& reading, Fields& fields, AskedOf of, Rules& rules) {
  for (const Askable& row : chain::askables()) {
    if (row.of != of || row.key.empty() || std::holds_alternative<std::monostate>(row.field)) continue;
    const Value value = fields.find(row.key);
    if (!value.exists()) continue;
    if (row.kind == AskedKind::yes_no) {
      chain::choose(rules, row, catalog::read_flag(value, reading.problems).value_or(false) ? 1 : 0);
    } else if (row.kind == AskedKind::choice) {
      chain::choose(rules, row, fields.choice(value, row.choices).value_or(0));
    } else {
      read_value(reading, rules, row, value);
    }
  }
}

/// Before any of them is read: each is looked up in the whole catalog.
bool are_at_most(JobReading& reading, const Value& list, std::size_t most, std::string_view what) {
  if (list.size() <= most) return true;
  reading.problems.add(list, fmt::format("{}: {} {}; allowed are at most {}", list.path(), list.size(), what, most));
  return false;
}

/// A gauge, a plug, a valve whose far side stays open.
bool can_end_a_run(const catalog::Part& part) { return part.ports.size() == 1 || part.ports.size() == 2; }

void read_held(JobReading& reading, const Value& value, JobConnection& connection) {
  if (!value.exists()) return;
  Fields fields(value, {"from", "to"}, reading.problems);
  if (!fields.valid()) return;
  const auto freedom = [&fields](std::string_view key) {
    return chosen<Freedom>(fields.choice(fields.find(key), askable("held_ends").choices));
  };
  connection.from_freedom = freedom("from");
  connection.to_freedom = freedom("to");
}

}  // namespace

void read_rules(JobReading& reading, Fields& fields, chain::RunRules& rules) {
  read_rows(reading, fields, AskedOf::run, rules);
}

void read_rules(JobReading& reading, Fields& fields, chain::WayRules& rules) {
  read_rows(reading, fields, AskedOf::branch, rules);
}

std::vector<std::string_view> with_asked_keys(std::vector<std::string_view> keys, AskedOf of) {
  for (const Askable& row : chain::askables()) {
    const bool of_the_run = of == AskedOf::run && row.of == AskedOf::distance;
    const bool known = std::find(keys.begin(), keys.end(), row.key) != keys.end();
    if ((row.of == of || of_the_run) && !row.key.empty() && !known) keys.push_back(row.key);
  }
  return keys;
}

void read_needs(JobReading& reading, Fields& fields, std::vector<chain::Need>& wanted,
                std::vector<chain::Avoidance>& avoided) {
  const Value needs = fields.find("need");
  if (needs.exists() && are_at_most(reading, needs, chain::kMostNeeds, "things are asked for"))
    for (const Value& words : catalog::read_texts(needs, reading.problems)) {
      std::vector<PartId> parts = read_parts(reading, words);
      if (!parts.empty()) wanted.push_back({std::string(words.text()), std::move(parts)});
    }
  const std::size_t apart = chain::told_apart(wanted, false).size();
  if (apart > chain::kMostNeeds)
    reading.problems.add(needs, fmt::format("{}: needs of which one is within the other are two parts, {} in all; "
                                            "allowed are at most {}",
                                            needs.path(), apart, chain::kMostNeeds));
  const Value avoid = fields.find("avoid");
  if (!avoid.exists() || !are_at_most(reading, avoid, kMostAvoided, "things are kept out")) return;
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

std::optional<Length> read_distance(JobReading& reading, Fields& fields, Length chain::Span::*field, const char* code) {
  chain::Span span;
  const Askable& row = askable(code);
  const Value value = fields.find(row.key);
  return value.exists() && read_value(reading, span, row, value) ? std::optional(span.*field) : std::nullopt;
}

void read_limits(JobReading& reading, Fields& fields, JobConnection& connection) {
  connection.gap = read_distance(reading, fields, &chain::Span::along, "distance");
  connection.offset = read_distance(reading, fields, &chain::Span::offset, "offset");
  connection.hose_length = fields.find_with("hose length", ranged(read_length, inches(1.0), feet(100.0)));
  connection.tells_of_vacuum = fields.map()["vacuum"].exists();
  read_rules(reading, fields, connection);
}

JobConnection read_connection(JobReading& reading, const Value& value) {
  JobConnection connection;
  static const std::vector<std::string_view> kKeys =
      with_asked_keys({"name", "from", "to", "ends in", "branches", "hose length", "take"}, AskedOf::run);
  Fields fields(value, kKeys, reading.problems);
  if (!fields.valid()) return connection;
  connection.from = fields.need_text("from");
  read_far_end(reading, fields, connection);
  const std::string far_end = !connection.branches.empty() ? fmt::format("{} branches", connection.branches.size())
                              : connection.ends_in         ? connection.ends_in->words
                                                           : connection.to;
  connection.name = fields.text_or("name", connection.from + " to " + far_end);
  connection.carries = chosen<Service>(fields.choice(fields.find("carries"), askable("air").choices));
  read_needs(reading, fields, connection.needs, connection.avoided);
  read_held(reading, fields.find("held"), connection);
  connection.order = read_order(fields, "order");
  connection.take = read_take(reading, fields.find("take"));
  read_limits(reading, fields, connection);
  return connection;
}

}  // namespace

void read_connections(JobReading& reading, const Value& value, Job& job) {
  if (!are_at_most(reading, value, kMostConnections, "connections")) return;
  for (const Value& item : catalog::read_list(value, reading.problems))
    job.connections.push_back(read_connection(reading, item));
}

}  // namespace riserun::plan
