#include "plan/settle/marked_devices.h"

#include "quantity/conversions.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

namespace {

using catalog::Role;
using quantity::fact;

constexpr double kReliefOverSetting = 1.2;
constexpr double kGaugeOverSetting = 2.0;
constexpr double kRangeOverSetting = 1.5;  // the lower two thirds
constexpr double kSettingOverLift = 1.5;
/// A setting that is worked out goes down for the relief valve that is there, so that this one need not stand over what
/// is expected: at that share of it the setting is still a quarter over what lifts the water (common practice).
constexpr double kReliefUnderExpected = 0.85;

/// Of a gauge, a relief valve or a regulator; nullopt: it has none.
std::optional<GaugePressure> mark_of(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  switch (catalog.family(part.family).role) {
    case Role::relief_valve:
      return part.opens_at;
    case Role::gauge:
    case Role::regulator:
      return part.full_scale;
    default:
      return std::nullopt;
  }
}

/// The pressure to finish and half as much again, as a setting is worked out.
GaugePressure setting_to_expect(const Job& job) {
  if (job.air.set_pressure) return *job.air.set_pressure;
  const Length lift = job.table.floor_height + job.table.depth;
  return gauge_pascals(kSettingOverLift * quantity::kPascalsPerInchOfWater * in_inches(lift));
}

double over_setting(const Job& job, Role role) {
  if (role == Role::relief_valve) return job.air.set_pressure ? kReliefOverSetting : kReliefUnderExpected;
  return role == Role::gauge ? kGaugeOverSetting : kRangeOverSetting;
}

/// The lowest of these marks from `least` on; else the highest.
GaugePressure mark_from(std::vector<GaugePressure> marks, GaugePressure least) {
  std::sort(marks.begin(), marks.end());
  const auto found =
      std::find_if(marks.begin(), marks.end(), [&](GaugePressure mark) { return quantity::at_most(least, mark); });
  return found == marks.end() ? marks.back() : *found;
}

/// Marks of the parts of that role, each once.
std::vector<GaugePressure> marks_of(const Catalog& catalog, const std::vector<PartId>& parts, Role role) {
  std::vector<GaugePressure> marks;
  for (const PartId id : parts) {
    const auto mark = mark_of(catalog, id);
    if (mark && catalog.family(catalog.part(id).family).role == role &&
        std::find(marks.begin(), marks.end(), *mark) == marks.end())
      marks.push_back(*mark);
  }
  return marks;
}

class Marking {
 public:
  Marking(const Catalog& catalog, const Job& job, std::optional<GaugePressure> least_relief, Remarks& remarks)
      : catalog_(catalog),
        job_(job),
        setting_(setting_to_expect(job)),
        least_relief_(least_relief.value_or(psig(0.0))),
        remarks_(remarks) {}

  void narrow(const std::string& words, const std::string& connection, std::vector<PartId>& parts) {
    for (const Role role : {Role::relief_valve, Role::gauge, Role::regulator}) {
      std::vector<GaugePressure> marks = marks_of(catalog_, parts, role);
      if (marks.size() < 2) continue;
      const auto& range = job_.air.regulator_range;
      const bool by_range = role == Role::regulator && range;
      GaugePressure least = by_range ? *range : gauge_pascals(in_pascals(setting_) * over_setting(job_, role));
      if (role == Role::relief_valve) least = std::max(least, least_relief_);
      const GaugePressure mark = mark_from(std::move(marks), least);
      std::erase_if(parts, [&](PartId id) {
        const auto own = mark_of(catalog_, id);
        return own && catalog_.family(catalog_.part(id).family).role == role && *own != mark;
      });
      remarks_.assume(fact("mark_of_device", words, connection, mark));
    }
  }

  /// Of air at a psi or two the lightest spring, where what is ordered counts: half a psi of the usual one is a third
  /// of what lifts the water.
  void take_lightest_spring(JobConnection& connection) {
    if (connection.carries != Service::air || !connection.special_order) return;
    for (chain::Need& need : connection.needs) {
      if (std::any_of(need.parts.begin(), need.parts.end(), [&](PartId id) { return spring_of(id) && is_in_bin(id); }))
        continue;
      std::optional<GaugePressure> lightest;
      for (const PartId id : need.parts)
        if (const auto opens = spring_of(id); opens && (!lightest || *opens < *lightest)) lightest = opens;
      const auto is_stiffer = [&](PartId id) {
        const auto opens = spring_of(id);
        return opens && quantity::more_than(*opens, *lightest);
      };
      if (std::erase_if(need.parts, is_stiffer) > 0)
        remarks_.assume(fact("lightest_spring", need.words, connection.name, *lightest));
    }
  }

  void narrow_needs(JobConnection& connection) {
    const auto is_regulator = [&](const chain::Need& need) {
      return !marks_of(catalog_, need.parts, Role::regulator).empty();
    };
    if (std::count_if(connection.needs.begin(), connection.needs.end(), is_regulator) != 1) return;
    const auto need = std::find_if(connection.needs.begin(), connection.needs.end(), is_regulator);
    narrow(need->words, connection.name, need->parts);
  }

 private:
  /// What a spring check opens at; nullopt: it is none.
  std::optional<GaugePressure> spring_of(PartId id) const {
    const catalog::Part& part = catalog_.part(id);
    return catalog_.family(part.family).check == catalog::CheckKind::spring ? part.opens_at : std::nullopt;
  }

  bool is_in_bin(PartId id) const {
    const auto& items = job_.bin.items;
    return std::any_of(items.begin(), items.end(),
                       [&](const catalog::BinItem& item) { return item.part == id && item.count > 0; });
  }

  const Catalog& catalog_;
  const Job& job_;
  GaugePressure setting_;
  GaugePressure least_relief_;
  Remarks& remarks_;
};

}  // namespace

bool names_no_relief_mark(const Catalog& catalog, const Job& job) {
  const auto open = [&](const auto& each) {
    return each.ends_in && marks_of(catalog, each.ends_in->parts, Role::relief_valve).size() > 1;
  };
  return std::any_of(job.connections.begin(), job.connections.end(), [&](const JobConnection& connection) {
    return open(connection) || std::any_of(connection.branches.begin(), connection.branches.end(), open);
  });
}

Job with_marks(const Catalog& catalog, Job job, std::optional<GaugePressure> least_relief, Remarks& remarks) {
  const Job asked = job;
  Marking marking(catalog, asked, least_relief, remarks);
  for (JobConnection& connection : job.connections) {
    if (connection.ends_in) marking.narrow(connection.ends_in->words, connection.name, connection.ends_in->parts);
    marking.narrow_needs(connection);
    marking.take_lightest_spring(connection);
    for (JobBranch& branch : connection.branches)
      if (branch.ends_in) marking.narrow(branch.ends_in->words, connection.name, branch.ends_in->parts);
  }
  return job;
}

}  // namespace riserun::plan
