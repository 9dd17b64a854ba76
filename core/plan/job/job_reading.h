// What the files that read the parts of a job share: the catalog, the problems found so far, and readers with a range.
#pragma once

#include "catalog/yaml/fields.h"
#include "catalog/yaml/nearest_name.h"
#include "chain/ask/askable.h"
#include "plan/job/job.h"
#include "plan/job/read_before.h"
#include "quantity/read.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

inline const Length kTape = quantity::inches(1.0 / 16.0);  // that a tape's reading may be off: common practice

struct JobReading {
  const Catalog* catalog;        // with the job's own prices and measured parts, once read_own_parts has run
  std::filesystem::path folder;  // of the job file: files that it names are looked for there
  catalog::Problems& problems;
  std::optional<UnitSystem> units;  // of numbers without a unit
  ReadBefore& before;

  catalog::PartSearch& words() {
    std::unique_ptr<catalog::PartSearch>& search = catalog == before.own_catalog.get() ? before.own : before.listed;
    if (!search) search = std::make_unique<catalog::PartSearch>(*catalog);
    return *search;
  }
};

/// A reader of quantity/read.h that also refuses what lies outside the range, naming the range.
template <class Read, class T>
auto ranged(Read read, T low, T high) {
  return [=](const quantity::Written& text) {
    return quantity::within(read(text), quantity::Range<T>{low, high}, text);
  };
}

/// Bin, prices and measured parts: each a list, or the name of a file that holds one. First of all, as they change the
/// catalog that the rest is read against.
void read_own_parts(JobReading& reading, const catalog::Value& root, Job& job);
void read_reservoir(JobReading& reading, const catalog::Value& value, Job& job);
void read_table(JobReading& reading, const catalog::Value& value, Job& job);
void read_riser(JobReading& reading, const catalog::Value& value, Job& job);
void read_air(JobReading& reading, const catalog::Value& value, Job& job);
void read_vent(JobReading& reading, const catalog::Value& value, Job& job);
void read_relief_valve(JobReading& reading, const catalog::Value& value, Job& job);
void read_wishes(JobReading& reading, const catalog::Value& value, Job& job);
void read_liquid(JobReading& reading, const catalog::Value& value, Job& job);
void read_connections(JobReading& reading, const catalog::Value& value, Job& job);

/// The branches of a connection; what else is said of it must suit several far ends.
void read_branches(JobReading& reading, catalog::Fields& fields, JobConnection& connection);
/// The parts that close an end, of those that the words match; a problem when there are none.
std::optional<EndDevice> read_end_device(JobReading& reading, const catalog::Value& words);
/// `need` and `avoid`.
void read_needs(JobReading& reading, catalog::Fields& fields, std::vector<chain::Need>& needs,
                std::vector<chain::Avoidance>& avoid);
/// All that is kept in a field of its own, of the rows of what can be asked of a run, or of a branch.
void read_rules(JobReading& reading, catalog::Fields& fields, chain::RunRules& rules);
void read_rules(JobReading& reading, catalog::Fields& fields, chain::WayRules& rules);
/// The keys of a connection, or of a branch: those of the table of what can be asked behind these.
std::vector<std::string_view> with_asked_keys(std::vector<std::string_view> keys, chain::AskedOf of);

/// `take`: ids of parts from the first port on, plugs behind their part, or maps with the ports that a part is entered
/// and left by, counted from 1.
std::optional<std::vector<chain::TakenPart>> read_take(JobReading& reading, const catalog::Value& value);

enum class Vessel { reservoir, table, air };
std::vector<JobPort> read_ports(JobReading& reading, const catalog::Value& value, Vessel vessel);
std::optional<MaterialId> read_material(JobReading& reading, const catalog::Value& value);
/// The parts that the words match; a problem when there are none.
std::vector<PartId> read_parts(JobReading& reading, const catalog::Value& value);
/// The parts that are kept out by the words; a problem when there are none.
std::vector<PartId> read_avoided_parts(JobReading& reading, const catalog::Value& value);
/// The one part that the words match, or that has them as its id; a problem when there are none or several.
std::optional<PartId> read_one_part(JobReading& reading, const catalog::Value& value);
std::optional<chain::Order> read_order(catalog::Fields& fields, std::string_view key);

/// What the place of a word stands for, in an enumeration whose words are in its order.
template <class T>
std::optional<T> chosen(std::optional<std::size_t> place) {
  return place ? std::optional(static_cast<T>(*place)) : std::nullopt;
}

/// What must agree between the parts of a job: depths with heights, names with ports.
void check_job(JobReading& reading, const catalog::Value& root, const Job& job);
/// ... the widest bare panel with the box and with the bays that are given beside it,
void check_panel(JobReading& reading, const catalog::Value& root, const Job& job);
/// ... and what no fitter could build: faces and mouths of ports outside their box, air that never reaches the
/// reservoir, a hose far too short for its gap.
void check_geometry(JobReading& reading, const catalog::Value& root, const Job& job);

/// `against heat` and `against frost`: measures of a closed set each, in the words of the bench.
void read_measures(JobReading& reading, const catalog::Value& heat, const catalog::Value& frost, Job& job);

/// `cutting`: the materials that are worked over the water, the metals among them that make hydrogen told apart.
void read_cutting(JobReading& reading, const catalog::Value& value, Job& job);

}  // namespace riserun::plan
