// Reads what a job says of parts: the bin, its own prices, and parts that were measured by hand.
#include "catalog/load/load.h"
#include "catalog/load/part_bounds.h"
#include "catalog/yaml/document.h"
#include "plan/job/job_reading.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <map>

namespace riserun::plan {

using catalog::CatalogBuilder;
using catalog::Document;
using catalog::Fields;
using catalog::Value;

namespace {

/// Calls `read` with the list that stands there: the list itself, or that of the file that is named there under `key`.
/// It is told whether that file is a table, whose rows are the list.
template <class Read>
void with_list(JobReading& reading, const Value& value, std::string_view key, Read read) {
  if (!value.exists()) return;
  if (!value.is_text()) {
    read(value, false);
    return;
  }
  catalog::Problems unread;
  Document file = Document::load(reading.folder / std::filesystem::path(value.text()), unread);
  file.settle_units(reading.units);
  if (!unread.empty()) {
    reading.problems.take(std::move(unread));
    return;
  }
  if (file.is_table()) {
    read(file.root(), true);
    return;
  }
  Fields fields(file.root(), {key, "units"}, reading.problems);
  catalog::read_units(fields);
  if (const Value list = fields.need(key); list.exists()) read(list, false);
}

/// The catalog's part with what was measured in place of the catalog's figures; both ports keep their share of the
/// length.
catalog::Part with_measures(catalog::Part part, const std::optional<Length>& length, const std::optional<Length>& bore,
                            const std::optional<GaugePressure>& rating) {
  Length listed = metres(0.0);
  for (const catalog::Port& port : part.ports) listed += port.reach;
  for (catalog::Port& port : part.ports) {
    if (length && listed > metres(0.0)) port.reach = port.reach * (*length / listed).value();
    if (bore) port.bore = *bore;
  }
  if (rating) part.rating = *rating;
  part.measured = true;
  return part;
}

/// A length or a bore that a part of its kind cannot have is a slip of the rule, or of the part's name.
bool can_be(JobReading& reading, const Fields& fields, const catalog::Catalog& known, const catalog::Part& part,
            const std::optional<Length>& length, const std::optional<Length>& bore) {
  const std::size_t before = reading.problems.size();
  const auto written = [](Length value) { return quantity::write_length(value, quantity::UnitSystem::inch); };
  const auto refuse = [&](std::string_view key, const std::string& message) {
    const Value where = fields.map()[key];
    reading.problems.add(where, where.path() + ": " + message);
  };
  const auto [least, most] = catalog::lengths_of(known, part);
  if (length && (*length < least || *length > most))
    refuse("length", fmt::format("no {} is {} long; allowed is {} (what goes into its joints) to {}", part.name,
                                 written(*length), written(least), written(most)));
  const auto below = catalog::bore_below(known, part);
  if (bore && below && *bore >= *below)
    refuse("bore", fmt::format("no {} has a bore of {}; allowed is less than {}, its outside", part.name,
                               written(*bore), written(*below)));
  return reading.problems.size() == before;
}

/// @param seen  the parts that were measured already, with the line
void read_measured_part(JobReading& reading, const Value& item, CatalogBuilder& builder, std::map<PartId, int>& seen) {
  Fields fields(item, {"part", "length", "bore", "rating"}, reading.problems);
  if (!fields.valid()) return;
  const Value words = fields.need("part");
  const auto part = words.exists() ? read_one_part(reading, words) : std::nullopt;
  const auto length = fields.find_with("length", ranged(read_length, inches(0.1), feet(100.0)));
  const auto bore = fields.find_with("bore", ranged(read_length, inches(0.02), inches(24.0)));
  const auto rating = fields.find_with("rating", ranged(read_pressure, psig(0.0), psig(10000.0)));
  if (!length && !bore && !rating) {
    reading.problems.add(item, item.path() + ": nothing was measured: give length, bore or rating");
    return;
  }
  if (!part) return;
  if (const auto [first, is_new] = seen.emplace(*part, words.line()); !is_new) {
    reading.problems.add(words, fmt::format("{}: '{}' was measured on line {} already; keep one", words.path(),
                                            builder.so_far().part(*part).id, first->second));
    return;
  }
  const catalog::Part& listed = builder.so_far().part(*part);
  if (can_be(reading, fields, builder.so_far(), listed, length, bore))
    builder.replace(*part, with_measures(listed, length, bore, rating));
}

/// One bin, in the job or in a file, or names of several with the file of each.
void read_bins(JobReading& reading, const Value& value, CatalogBuilder& builder, Job& job) {
  const auto read = [&](const Value& from, std::string name) {
    catalog::NamedBin bin{std::move(name), from.is_text() ? std::string(from.text()) : "", {}};
    with_list(reading, from, "bin",
              [&](const Value& list, bool) { bin.bin = catalog::read_bin(list, builder, reading.problems); });
    job.bins.push_back(std::move(bin));
  };
  if (!value.is_map()) {
    if (value.exists()) read(value, "");
  } else {
    for (const auto& [name, file] : value.entries())
      if (catalog::read_text(file, reading.problems)) read(file, std::string(name.text()));
  }
  job.bin = catalog::all_of(job.bins);
}

/// That of the reading before where it is the same, so that what was found in it is still known.
std::shared_ptr<const Catalog> own_catalog(CatalogBuilder builder, ReadBefore& before) {
  Catalog made = std::move(builder).build();
  if (before.own_catalog && before.own_catalog->same_parts(made)) return before.own_catalog;
  before.own.reset();
  return before.own_catalog = std::make_shared<const Catalog>(std::move(made));
}

bool any_own_parts(const Value& root) {
  return root["bin"].exists() || root["prices"].exists() || root["measured"].exists();
}

}  // namespace

void read_own_parts(JobReading& reading, const Value& root, Job& job) {
  if (!any_own_parts(root)) return;
  const std::size_t problems_before = reading.problems.size();
  CatalogBuilder builder(*reading.catalog);
  with_list(reading, root["prices"], "prices", [&](const Value& list, bool is_table) {
    return is_table ? catalog::read_price_table(list, builder, reading.problems)
                    : catalog::read_prices(list, builder, reading.problems);
  });
  std::map<PartId, int> measured;
  with_list(reading, root["measured"], "measured", [&](const Value& list, bool) {
    for (const Value& item : catalog::read_list(list, reading.problems))
      read_measured_part(reading, item, builder, measured);
  });
  read_bins(reading, root["bin"], builder, job);
  if (reading.problems.size() > problems_before) return;
  job.own_catalog = own_catalog(std::move(builder), reading.before);
  reading.catalog = job.own_catalog.get();
}

}  // namespace riserun::plan
