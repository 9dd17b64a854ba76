// Reads the air supply, the vent and the wishes of a job.
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <cctype>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;

namespace {

auto bore() { return ranged(read_length, inches(0.01), inches(12.0)); }
auto air_pressure() { return ranged(read_pressure, psig(0.01), psig(300.0)); }

/// Liquids that air must not move, by the words that name them.
constexpr std::string_view kFlammable[] = {"gasoline", "petrol",  "diesel",   "kerosene", "paraffin", "acetone",
                                           "alcohol",  "ethanol", "methanol", "propanol", "solvent",  "thinner",
                                           "spirit",   "naphtha", "xylene",   "toluene",  "fuel",     "oil"};

}  // namespace

void read_liquid(JobReading& reading, const Value& value) {
  if (!value.exists()) return;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text || *text == "water") return;
  std::string lower(*text);
  for (char& c : lower) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const std::string_view word : kFlammable) {
    if (lower.find(word) == std::string::npos) continue;
    reading.problems.add(value, fmt::format("{}: '{}' burns, and air pressure must not move a flammable liquid "
                                            "(29 CFR 1910.106(e)(2)(iv)(d)); Riserun plans for water only",
                                            value.path(), *text));
    return;
  }
  reading.problems.add(value, fmt::format("{}: '{}' is not worked out; allowed is water", value.path(), *text));
}

void read_air(JobReading& reading, const Value& value, Job& job) {
  Fields fields(
      value,
      {"delivery", "receiver", "receiver pressure", "regulator range", "set pressure", "droop", "feed bore", "ports"},
      reading.problems);
  if (!fields.valid()) return;
  JobAir& air = job.air;
  air.delivery =
      fields.find_with("delivery", ranged(read_air_flow, cubic_feet_per_minute(0.0), cubic_feet_per_minute(2000.0)));
  air.receiver = fields.find_with("receiver", ranged(read_volume, us_gallons(0.0), us_gallons(5000.0)));
  air.receiver_pressure = fields.find_with("receiver pressure", air_pressure());
  air.regulator_range = fields.find_with("regulator range", air_pressure());
  air.set_pressure = fields.find_with("set pressure", air_pressure());
  air.droop = fields.find_with("droop", ranged(read_number, 0.0, 0.9));
  air.feed_bore = fields.find_with("feed bore", bore());
  air.ports = read_ports(reading, fields.find("ports"), Vessel::air);
  // The plate of the air supply is one of the five things that must be known.
  if (!value["delivery"].exists() && !value["receiver"].exists()) fields.need("delivery");
}

void read_vent(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"bore", "count"}, reading.problems);
  if (!fields.valid()) return;
  job.vent.bore = fields.find_with("bore", bore());
  job.vent.count = fields.find_with("count", ranged(read_count, 1, 20));
}

void read_wishes(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"fill time", "cost cap", "order"}, reading.problems);
  if (!fields.valid()) return;
  job.wishes.fill_time = fields.find_with("fill time", ranged(read_time, seconds(1.0), hours(24.0)));
  job.wishes.cost_cap = fields.find_with("cost cap", read_price);
  job.wishes.order = read_order(fields, "order");
}

std::optional<chain::Order> read_order(Fields& fields, std::string_view key) {
  return chosen<chain::Order>(fields.choice(fields.find(key), chain::askable("order").choices));
}

}  // namespace riserun::plan
