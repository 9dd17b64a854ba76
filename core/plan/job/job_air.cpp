// Reads the air supply, the vent and the wishes of a job.
#include "catalog/words/words.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;

namespace {

auto bore() { return ranged(read_length, inches(0.01), inches(12.0)); }
auto rise() { return ranged(read_pressure, psig(0.0), psig(30.0)); }
auto air_pressure() { return ranged(read_pressure, psig(0.01), psig(300.0)); }

/// `0 to 10 psi`, `0-10 psi`: a range as it stands on the dial, by its end; `10 psi` is the same.
quantity::Reading<GaugePressure> read_full_scale(const quantity::Written& written) {
  const std::string_view text = written.text;
  std::size_t end = 0;  // of what comes before the full scale
  if (text.starts_with('0')) {
    const std::size_t between = text.find_first_not_of(' ', 1);
    for (const std::string_view word : {"to ", "-"})
      if (between != std::string_view::npos && text.substr(between).starts_with(word)) end = between + word.size();
  }
  auto reading = quantity::read_pressure(written.with(text.substr(end)));
  if (auto* error = std::get_if<quantity::ReadError>(&reading)) error->offset += end;
  return reading;
}

auto full_scale() { return ranged(read_full_scale, psig(0.01), psig(300.0)); }

}  // namespace

void read_air(JobReading& reading, const Value& value, Job& job) {
  Fields fields(
      value,
      {"delivery", "receiver", "receiver pressure", "regulator range", "regulator repeatability", "set pressure",
       "droop", "rated flow", "lock up", "feed bore", "restrictor", "check valve opens at", "ports"},
      reading.problems);
  if (!fields.valid()) return;
  JobAir& air = job.air;
  air.delivery =
      fields.find_with("delivery", ranged(read_air_flow, cubic_feet_per_minute(0.01), cubic_feet_per_minute(2000.0)));
  air.receiver = fields.find_with("receiver", ranged(read_volume, us_gallons(0.0), us_gallons(5000.0)));
  air.receiver_pressure = fields.find_with("receiver pressure", air_pressure());
  air.regulator_range = fields.find_with("regulator range", full_scale());
  air.regulator_repeatability =
      fields.find_with("regulator repeatability", ranged(read_pressure_difference, psi(0.0), psi(50.0)));
  air.set_pressure = fields.find_with("set pressure", air_pressure());
  air.droop = fields.find_with("droop", ranged(read_number, 0.0, 0.9));
  air.rated_flow =
      fields.find_with("rated flow", ranged(read_air_flow, cubic_feet_per_minute(0.1), cubic_feet_per_minute(2000.0)));
  air.lock_up = fields.find_with("lock up", rise());
  air.feed_bore = fields.find_with("feed bore", bore());
  air.restrictor = fields.find_with("restrictor", bore());
  air.check_valve = fields.find_with("check valve opens at", rise());
  air.ports = read_ports(reading, fields.find("ports"), Vessel::air);
  // The plate of the air supply is one of the five things that must be known.
  if (!value["delivery"].exists() && !value["receiver"].exists())
    reading.problems.add(fields.map(), fields.map().path() + ": 'delivery' or 'receiver' is missing", 0,
                         quantity::mistake::kMissingKey);
}

void read_vent(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"bore", "count", "stays open", "purged"}, reading.problems);
  if (!fields.valid()) return;
  job.vent.stays_open = fields.flag_or("stays open", false);
  job.vent.purged = fields.flag_or("purged", false);
  job.vent.bore = fields.find_with("bore", bore());
  job.vent.count = fields.find_with("count", ranged(read_count, 1, 20));
}

void read_relief_valve(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"tolerance", "rise"}, reading.problems);
  if (!fields.valid()) return;
  const auto part_of_setting = ranged(read_pressure_difference, psi(0.0), psi(50.0));
  job.relief_valve.tolerance = fields.find_with("tolerance", part_of_setting);
  job.relief_valve.rise = fields.find_with("rise", part_of_setting);
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
