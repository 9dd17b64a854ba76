#include "chain/build/branch_assemble.h"
#include "chain/build/branch_way.h"
#include "chain/build/cautions.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace riserun::chain {

namespace {

/// The narrowest size on the way to the target, of the target's own kind of joint, where it is below the target's.
std::optional<catalog::SizeId> narrows_to(const Catalog& catalog, const PortEnd& target, const Chain& branch) {
  const catalog::PortType& end = catalog.port_type(target.type);
  const catalog::JointSize* narrowest = catalog.joint_size(end);
  if (!narrowest) return std::nullopt;
  for (const ChainJoint& joint : branch.joints) {
    const catalog::PortType& port = catalog.port_type(joint.a);
    const catalog::JointSize* size = port.kind == end.kind ? catalog.joint_size(port) : nullptr;
    if (size && size->outside_diameter < narrowest->outside_diameter) narrowest = size;
  }
  if (narrowest->size == end.size) return std::nullopt;
  return narrowest->size;
}

/// As the chain that the air or water meets which comes in by it.
void turn_round(Run& run) {
  std::swap(run.request.from, run.request.to);
  std::reverse(run.chain.parts.begin(), run.chain.parts.end());
  std::reverse(run.chain.joints.begin(), run.chain.joints.end());
  for (ChainPart& link : run.chain.parts) std::swap(link.enter, link.leave);
  for (ChainJoint& joint : run.chain.joints) std::swap(joint.a, joint.b);
}

// ASME BPVC section VIII division 1, UG-135 (from memory): the way to a relief valve is no smaller than its inlet.
void look_at_narrow_ways(const Catalog& catalog, const AssemblyRequest& request, const std::vector<Run>& runs,
                         std::vector<std::string>& cautions) {
  // Where it is said which one is the relief valve, its way is sound by the search.
  if (std::any_of(request.branches.begin(), request.branches.end(), [](const auto& b) { return b.relief; })) return;
  std::vector<std::string> ways;
  for (std::size_t target = 0; target < runs.size(); ++target)
    if (const auto size = narrows_to(catalog, request.targets[target], runs[target].chain))
      ways.push_back(fmt::format("{} to {} ({})", catalog.size_name(*size), name_of_target(request, target),
                                 catalog.written(request.targets[target].type)));
  if (ways.empty()) return;
  cautions.push_back(
      fmt::format("the way narrows to {}: a gauge does not mind, but a relief valve must never be fed through less "
                  "than the size of its own inlet, nor through a valve",
                  fmt::join(ways, ", to ")));
}

}  // namespace

void add_branch_cautions(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly) {
  std::vector<Run> runs;
  for (std::size_t target = 0; target < request.targets.size(); ++target) {
    Run& run = runs.emplace_back(Run{request.rules, branch_to(assembly, target)});
    run.request.from.called = name_of_base(request);
    run.request.to = request.targets[target];
    run.request.to.called = name_of_target(request, target);
    if (request.branch(target).flow == BranchFlow::to_base) turn_round(run);
  }
  assembly.cautions = cautions_of(catalog, runs);
  look_at_narrow_ways(catalog, request, runs, assembly.cautions);
}

}  // namespace riserun::chain
