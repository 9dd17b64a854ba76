// A connection's several far ends: what is asked of the search for a branched assembly, and what comes of it.
#include "plan/stage/branches.h"

#include "chain/ask/needs.h"
#include "chain/finder.h"
#include "plan/stage/connection_request.h"
#include "plan/stage/refused_run.h"

#include <algorithm>
#include <string_view>
#include <variant>

namespace riserun::plan {

namespace {

using chain::Assembly;
using chain::AssemblyRequest;
using chain::BranchFlow;
using chain::BranchRules;

/// Ways in: a gauge is entered by its port, a check valve by its first, a ball valve by either. What no store has on
/// the shelf is taken where it is in the bin or may be ordered; where that leaves nothing, all are, and it is said.
std::vector<catalog::PortUse> devices_for(const Inputs& inputs, const JobConnection& connection,
                                          const JobBranch& branch, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const Bin& bin = inputs.job.bin;
  const bool may_order = branch.special_order || connection.special_order;
  const auto to_be_had = [&](PartId id) { return may_order || catalog.part(id).stocked || bin.count_of(id) > 0; };
  std::vector<PartId> parts = at_home_beside(catalog, *find_port(inputs.job, connection.from), branch.ends_in->parts);
  if (std::any_of(parts.begin(), parts.end(), to_be_had)) {
    std::erase_if(parts, [&](PartId id) { return !to_be_had(id); });
  } else {
    remarks.assume(fact("device_is_special_order", branch.ends_in->words, connection.name));
  }
  std::vector<catalog::PortUse> uses;
  for (const PartId id : parts) {
    const catalog::Part& part = catalog.part(id);
    const std::size_t ways_in = part.arrow ? 1 : part.ports.size();
    for (std::size_t port = 0; port < ways_in; ++port) uses.push_back({id, static_cast<std::uint8_t>(port)});
  }
  return uses;
}

bool is_relief_valve(const Catalog& catalog, const JobBranch& branch) {
  return branch.ends_in && relief_setting(catalog, branch.ends_in->parts.front()).has_value();
}

/// Air comes in from the air supply, and by nothing else unless the job says so.
BranchFlow settle_flow(const Job& job, const JobBranch& branch) {
  const bool feeds = branch.feeds.value_or(is_air_port(job, branch.to));
  return feeds ? BranchFlow::to_base : BranchFlow::from_base;
}

void guard_relief_valve(const JobConnection& connection, const JobBranch& branch, BranchRules& rules,
                        Remarks& remarks) {
  rules.relief = true;
  remarks.assume(fact("way_to_relief_valve", connection.from, branch.name));
  if (branch.smallest_bore)
    remarks.caution(Topic::relief, fact("way_to_relief_valve_may_narrow", branch.name, *branch.smallest_bore),
                    "ASME BPVC Section VIII UG-135 (from memory) wants no less than the inlet");
  else
    remarks.assume(fact("bore_to_relief_valve", branch.name));
}

BranchRules rules_for(const Inputs& inputs, const JobConnection& connection, const JobBranch& branch, bool vacuum,
                      Remarks& remarks) {
  BranchRules rules;
  rules.flow = settle_flow(inputs.job, branch);
  rules.facing = branch.facing;
  rules.smallest_bore = branch.smallest_bore;
  rules.needs = chain::told_apart(chain::as_meant(inputs.catalog, branch.needs, vacuum), branch.needs_in_order);
  rules.needs_in_order = branch.needs_in_order;
  if (!branch.avoided.empty()) rules.banned.assign(inputs.catalog.parts().size(), false);
  for (const chain::Avoidance& avoidance : branch.avoided) {
    rules.avoid.push_back(avoidance.words);
    for (const PartId part : avoidance.parts) rules.banned[part.row] = true;
  }
  if (branch.ends_in) rules.devices = devices_for(inputs, connection, branch, remarks);
  if (is_relief_valve(inputs.catalog, branch)) guard_relief_valve(connection, branch, rules, remarks);
  return rules;
}

chain::PortEnd end_of(const Job& job, const JobConnection& connection, const JobBranch& branch, Remarks& remarks) {
  const std::string called = "the " + branch.name;
  if (branch.ends_in) return {PortTypeId{}, std::nullopt, chain::Freedom::loose, called};
  const JobPort& port = *find_port(job, branch.to);
  return {port.type, port.material, settle_freedom(job, connection, branch.to, branch.freedom, remarks), called};
}

/// Branches have no one length and no one loss.
void settle_order(const Job& job, const JobConnection& connection, chain::ChainRequest& request, Remarks& remarks) {
  if (request.order != chain::Order::length && request.order != chain::Order::loss) return;
  request.order = chain::Order::line;
  remarks.assume(fact("order_of_branches", connection.name), key_of(job, connection, "order"));
}

AssemblyRequest assembly_request(const Inputs& inputs, const JobConnection& connection, Service service,
                                 Remarks& remarks) {
  AssemblyRequest request;
  request.rules = request_for(inputs, connection, service, remarks);
  request.rules.from.called = "the " + connection.from;
  request.rules.most_parts.reset();
  request.rules.most_bushings = connection.most_bushings;  // of all branches together: none unless asked for
  settle_order(inputs.job, connection, request.rules, remarks);
  for (const JobBranch& branch : connection.branches) {
    request.targets.push_back(end_of(inputs.job, connection, branch, remarks));
    request.branches.push_back(rules_for(inputs, connection, branch, request.rules.vacuum, remarks));
    // What is asked for by name is let in; what the whole connection avoids stays out.
    for (const chain::Need& need : branch.needs)
      for (const PartId part : need.parts) request.rules.banned[part.row] = false;
  }
  for (const chain::Avoidance& avoidance : connection.avoided)
    for (const PartId part : avoidance.parts) request.rules.banned[part.row] = true;
  return request;
}

/// It says so itself, or by what it is made of.
bool speaks_of(const Fact& fact, std::string_view code) {
  if (fact.code == code) return true;
  return std::any_of(fact.values.begin(), fact.values.end(), [&](const quantity::Value& value) {
    const auto* facts = std::get_if<quantity::Facts>(&value);
    return facts != nullptr &&
           std::any_of(facts->begin(), facts->end(), [&](const Fact& each) { return speaks_of(each, code); });
  });
}

void refuse_without_assembly(const Catalog& catalog, const ConnectionPlan& plan, Remarks& remarks) {
  const chain::NoAssembly& none = *plan.no_assembly();
  Finding refusal{Topic::connections, fact("branches_cannot_be_joined", plan.name, none.reason), {}, {}};
  if (none.way && none.way->special_order)
    refusal.mend = fact("order_one_part_specially", part_title(catalog, *none.way->special_order), plan.name);
  else if (!none.mends.empty())
    refusal.mend = none.mends.front();
  else if (none.way && none.way->missing_part)
    refusal.mend = fact("one_part_would_complete_it", *none.way->missing_part);
  for (const chain::BranchRules& branch : plan.branched->branches) {
    const Fact& reason = none.way ? none.way->reason : none.reason;
    if (auto mend = fitters_mend(catalog, branch.needs, reason, refusal.mend)) {
      refusal.mend = std::move(*mend);
      break;
    }
  }
  if (!refusal.mend && (speaks_of(none.reason, "way_smaller_than_inlet") || speaks_of(none.reason, "way_can_be_shut")))
    refusal.mend = fact("relief_valve_on_a_bung_of_its_own");
  change_for_special_order(plan.name, refusal);
  remarks.refuse(std::move(refusal));
}

}  // namespace

chain::Demand ask_branches(const Inputs& inputs, const JobConnection& connection, ConnectionPlan& plan,
                           Remarks& remarks) {
  plan.name = connection.name;
  plan.from = connection.from;
  for (const JobBranch& branch : connection.branches) {
    plan.to += (plan.to.empty() ? "" : ", ") + branch.name;
    plan.ends.push_back(branch.name);
  }
  plan.service = settle_service(inputs, connection, remarks);
  plan.branched = assembly_request(inputs, connection, plan.service, remarks);
  plan.request = plan.branched->rules;
  plan.answer = chain::NoAssembly{};
  chain::Demand demand;
  demand.branched = plan.branched;
  return demand;
}

void settle_branches(const Inputs& inputs, ConnectionPlan& plan, Remarks& remarks) {
  const Assembly* assembly = plan.assembly();
  if (assembly == nullptr) {
    refuse_without_assembly(inputs.catalog, plan, remarks);
    return;
  }
  plan.cautions = assembly->cautions;
  for (const chain::RunPart& part : assembly->parts)
    if (const catalog::Part& row = inputs.catalog.part(part.part); row.cut_to_length)
      remarks.assume(fact("branched_hose_length", row.name, plan.name, straight_length(row)));
  for (const chain::RunJoint& joint : assembly->joints)
    if (inputs.catalog.mating_rules()[joint.rule].seal == "clamp") plan.clamps = ++plan.hose_joints;
}

}  // namespace riserun::plan
