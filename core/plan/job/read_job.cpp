#include "plan/job/read_job.h"

#include "catalog/yaml/document.h"
#include "catalog/yaml/read_file.h"
#include "plan/job/job_reading.h"
#include "quantity/printable.h"

#include <fmt/format.h>

namespace riserun::plan {

using catalog::Document;
using catalog::Fields;
using catalog::Problems;
using catalog::Value;

namespace {

constexpr std::size_t kLongestName = 200;

void read_surroundings(Fields& fields, Job& job) {
  job.water_temperature =
      fields.find_with("water temperature", ranged(read_temperature, degrees_fahrenheit(33.0), degrees_celsius(80.0)));
  const auto weather = ranged(read_temperature, degrees_celsius(-60.0), degrees_celsius(99.0));
  job.hottest = fields.find_with("hottest", weather);
  job.coldest = fields.find_with("coldest", weather);
  job.altitude = fields.find_with("altitude", ranged(read_altitude, metres(-500.0), metres(5000.0)));
  job.measured_fill_time = fields.find_with("measured fill time", ranged(read_time, seconds(1.0), hours(24.0)));
  job.test_pressure = fields.find_with("test pressure", ranged(read_pressure, psig(0.05), psig(15.0)));
}

Job read_root(const Catalog& catalog, Document& document, const std::filesystem::path& file, ReadBefore& before,
              Problems& problems) {
  Job job;
  const std::optional<UnitSystem> units = document.settle_units();
  const Value root = document.root();
  if (!root.exists() && !problems.empty()) return job;  // not parsed: its mistake is known
  const bool no_vessel = !root["reservoir"].exists() && !root["table"].exists() && !root["air"].exists();
  if (no_vessel && !problems.empty()) return job;  // an open quote has swallowed the rest
  if (!root.is_map()) {
    problems.add(root, "the file holds no job: keys such as 'reservoir', 'table' and 'air' are expected");
    return job;
  }
  JobReading reading{&catalog, file.parent_path(), problems, units, before};
  for (catalog::PartSearch* search : {before.listed.get(), before.own.get()})
    if (search != nullptr) search->begin_anew();
  Fields fields(root, {"name",          "units",         "reservoir",
                       "table",         "riser",         "connections",
                       "air",           "vent",          "water temperature",
                       "hottest",       "coldest",       "against heat",
                       "against frost", "altitude",      "liquid",
                       "cutting",       "test pressure", "measured fill time",
                       "relief valve",  "bin",           "prices",
                       "measured",      "wishes"},
                problems);
  read_own_parts(reading, root, job);
  job.name =
      fields.text_or("name", file == catalog::kStandardInput ? "job" : quantity::printable(file.stem().string()));
  if (job.name.size() > kLongestName)
    problems.add(fields.find("name"), fmt::format("name: is longer than {} characters", kLongestName));
  job.units = catalog::read_units(fields).value_or(UnitSystem::inch);
  if (const Value value = fields.need("reservoir"); value.exists()) read_reservoir(reading, value, job);
  if (const Value value = fields.need("table"); value.exists()) read_table(reading, value, job);
  if (const Value value = fields.need("air"); value.exists()) read_air(reading, value, job);
  if (const Value value = fields.find("riser"); value.exists()) read_riser(reading, value, job);
  if (const Value value = fields.find("vent"); value.exists()) read_vent(reading, value, job);
  if (const Value value = fields.find("relief valve"); value.exists()) read_relief_valve(reading, value, job);
  if (const Value value = fields.find("wishes"); value.exists()) read_wishes(reading, value, job);
  if (const Value value = fields.find("connections"); value.exists()) read_connections(reading, value, job);
  read_surroundings(fields, job);
  read_measures(reading, fields.find("against heat"), fields.find("against frost"), job);
  read_liquid(reading, fields.find("liquid"), job);
  read_cutting(reading, fields.find("cutting"), job);
  check_job(reading, root, job);
  return job;
}

Job finished(const Catalog& catalog, Document document, const std::filesystem::path& file, ReadBefore& before,
             Problems problems) {
  Job job = read_root(catalog, document, file, before, problems);
  std::move(problems).throw_if_any();
  return job;
}

}  // namespace

Job load_job(const Catalog& catalog, const std::filesystem::path& path) {
  Problems problems;
  Document document = Document::load(path, problems);
  ReadBefore nothing;
  return finished(catalog, std::move(document), path, nothing, std::move(problems));
}

Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name) {
  ReadBefore nothing;
  return read_job(catalog, text, name, nothing);
}

Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name, ReadBefore& before) {
  Problems problems;
  Document document = Document::parse(text, name.string(), problems);
  return finished(catalog, std::move(document), name, before, std::move(problems));
}

}  // namespace riserun::plan
