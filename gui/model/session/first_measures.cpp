#include "gui/model/session/first_measures.h"

#include "gui/model/text/job_texts.h"
#include "plan/job/starter_job.h"
#include "quantity/error_codes.h"

#include <algorithm>
#include <stdexcept>

namespace riserun::gui {

namespace {

JobText without(JobText text, const JobPath& path) {
  if (text.find(path) == nullptr) return text;
  Edited edited = text.remove(path);
  if (const auto* why = std::get_if<CannotEdit>(&edited)) throw std::logic_error(path.text() + ": " + why->reason);
  return std::get<JobText>(std::move(edited));
}

/// A mistake may point at a place within the value.
bool stands_at(const WrittenValue& value, const quantity::Problem& problem) {
  return value.line == problem.line && problem.column >= value.column &&
         problem.column <= value.column + static_cast<int>(value.text.size());
}

bool stands_at_theirs(const JobState& job, const quantity::Problem& problem) {
  return std::any_of(job.values.begin(), job.values.end(), [&](const auto& value) {
    return is_first_measure(value.first) && stands_at(value.second, problem);
  });
}

}  // namespace

const std::vector<Thing>& five_things() {
  using enum FieldKind;
  static const std::vector<Thing> kThings = {
      {"Tank",
       {{at("reservoir") / "inside" / "length", length, "length", "tank length",
         "Inside, the longer side of the closed tank."},
        {at("reservoir") / "inside" / "width", length, "width", "tank width", "Inside, the shorter side."},
        {at("reservoir") / "inside" / "height", length, "height", "tank height",
         "Inside, from its floor to its lid."}}},
      {"Sheet and stays",
       {{at("reservoir") / "sheet", sheet, "sheet", "sheet", "Gauge or thickness, and metal: 10 ga steel."},
        {at("reservoir") / "supports" / "baffles across", count, "baffles across", "baffles across",
         "Upright plates across the length, floor to lid; 0 for none."},
        {at("reservoir") / "supports" / "baffles along", count, "baffles along", "baffles along",
         "The same along the length.", false}}},
      {"Table",
       {{at("table") / "inside" / "length", length, "length", "table length", "Inside, of the open table above."},
        {at("table") / "inside" / "width", length, "width", "table width", "Inside."}}},
      {"Water",
       {{at("table") / "depth", length, "depth", "water depth", "How deep it is to stand in the table."},
        {at("table") / "floor height", length, "floor height", "floor height",
         "The table's floor over the tank's inside floor."}}},
      {"Compressor",
       {{at("air") / "delivery", air_flow, "delivery", "compressor delivery", "Free air, from its plate: 4 scfm."},
        {at("air") / "receiver", volume, "receiver", "receiver", "Its tank, from its plate: 10 gal.", false}}},
  };
  return kThings;
}

bool is_first_measure(const JobPath& at) {
  return std::any_of(five_things().begin(), five_things().end(), [&](const Thing& thing) {
    return std::any_of(thing.measures.begin(), thing.measures.end(),
                       [&](const Measure& measure) { return measure.at == at; });
  });
}

JobPath measure_after(const JobPath& at) {
  bool found = false;
  for (const Thing& thing : five_things())
    for (const Measure& measure : thing.measures) {
      if (found) return measure.at;
      found = measure.at == at;
    }
  return {};
}

std::optional<WrongEntry> wrong_at(const JobState& job, const JobPath& at) {
  if (const auto entry = job.wrong_entries.find(at); entry != job.wrong_entries.end()) return entry->second;
  const auto value = job.values.find(at);
  if (value == job.values.end()) return std::nullopt;
  for (const quantity::Problem& problem : job.problems)
    if (stands_at(value->second, problem)) return WrongEntry{value->second.text, problem.message};
  return std::nullopt;
}

bool only_first_measures_are_wrong(const JobState& job) {
  return !job.problems.empty() &&
         std::all_of(job.problems.begin(), job.problems.end(),
                     [&](const quantity::Problem& problem) { return stands_at_theirs(job, problem); });
}

std::vector<std::string> still_to_give(const JobState& job) {
  std::vector<std::string> missing;
  for (const Thing& thing : five_things())
    for (const Measure& measure : thing.measures)
      if (measure.needed && !job.values.contains(measure.at)) missing.emplace_back(measure.name);
  return missing;
}

bool only_lacks_measures(const JobState& job) {
  return !still_to_give(job).empty() &&
         std::all_of(job.problems.begin(), job.problems.end(), [&](const quantity::Problem& problem) {
           return problem.code == quantity::mistake::kMissingKey || stands_at_theirs(job, problem);
         });
}

std::string blank_job() {
  auto read = JobText::read(plan::starter_job(), "starter job");
  JobText text = std::get<JobText>(std::move(read));
  for (const Thing& thing : five_things())
    for (const Measure& measure : thing.measures) text = without(std::move(text), measure.at);
  return without(without(std::move(text), at("table") / "rim"), at("name")).text();
}

}  // namespace riserun::gui
