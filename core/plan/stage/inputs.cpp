#include "plan/stage/inputs.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

std::string key_of(const Job& job, const JobConnection& connection, const char* key) {
  const std::vector<JobConnection>& all = job.connections;
  const auto place =
      std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == connection.name; });
  return fmt::format("connections[{}].{}", place - all.begin() + 1, key);
}

std::string part_title(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  return row.names_material ? row.name : fmt::format("{}, {}", row.name, catalog.material(row.material).name);
}

std::optional<GaugePressure> full_scale(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  return catalog.family(row.family).role == catalog::Role::gauge ? row.full_scale : std::nullopt;
}

std::optional<GaugePressure> relief_setting(const Catalog& catalog, PartId part) {
  const catalog::Part& row = catalog.part(part);
  return catalog.family(row.family).role == catalog::Role::relief_valve ? row.opens_at : std::nullopt;
}

bool is_clamped(const Catalog& catalog, const chain::RunJoint& joint) {
  const catalog::Seal* seal = catalog.seal(catalog.mating_rules()[joint.rule].seal);
  return seal != nullptr && seal->clamped;
}

Length straight_length(const catalog::Part& part) {
  Length length = metres(0.0);
  for (const catalog::Port& port : part.ports) length += port.reach;
  return length;
}

bool names_a_regulator(const Inputs& inputs) {
  const auto is_one = [&](const chain::Need& need) {
    return !need.parts.empty() && std::all_of(need.parts.begin(), need.parts.end(), [&](PartId part) {
      return inputs.catalog.family(inputs.catalog.part(part).family).role == catalog::Role::regulator;
    });
  };
  const auto any = [&](const std::vector<chain::Need>& needs) {
    return std::any_of(needs.begin(), needs.end(), is_one);
  };
  return std::any_of(inputs.job.connections.begin(), inputs.job.connections.end(), [&](const JobConnection& line) {
    return any(line.needs) || std::any_of(line.branches.begin(), line.branches.end(),
                                          [&](const JobBranch& branch) { return any(branch.needs); });
  });
}

}  // namespace riserun::plan
