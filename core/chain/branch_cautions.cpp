#include "chain/branch_assemble.h"
#include "chain/cautions.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace riserun::chain {

using What = PortFollower::What;

namespace {

std::size_t joint_onto(const Assembly& assembly, bool to_target, std::size_t outer) {
  const auto joint = std::find_if(assembly.joints.begin(), assembly.joints.end(),
                                  [&](const auto& j) { return j.to_target == to_target && j.outer == outer; });
  return static_cast<std::size_t>(joint - assembly.joints.begin());
}

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

Chain branch_to(const Assembly& assembly, std::size_t target) {
  Chain branch;
  std::size_t at = joint_onto(assembly, true, target);
  branch.joints.push_back(assembly.joints[at].joint);
  while (assembly.joints[at].inner != kBase) {
    const std::size_t row = assembly.joints[at].inner;
    const AssemblyPart& part = assembly.parts[row];
    ChainPart& link = branch.parts.emplace_back();
    link = {part.part, part.enter, assembly.joints[at].inner_port, part.from_bin, {}, {}};
    for (const PortFollower& port : part.ports) {
      if (port.what != What::plug) continue;
      link.plugs.push_back(port.plug);
      link.plug_from_bin.push_back(port.plug_from_bin);
    }
    at = joint_onto(assembly, false, row);
    branch.joints.push_back(assembly.joints[at].joint);
  }
  std::reverse(branch.parts.begin(), branch.parts.end());
  std::reverse(branch.joints.begin(), branch.joints.end());
  return branch;
}

std::optional<Length> bore_of_branch(const Catalog& catalog, const Assembly& assembly, std::size_t target) {
  std::optional<Length> least;
  for (const ChainPart& link : branch_to(assembly, target).parts) {
    const catalog::Part& part = catalog.part(link.part);
    const Length bore = std::min(port_bore(catalog, part, link.enter), port_bore(catalog, part, link.leave));
    if (bore > Length{} && (!least || bore < *least)) least = bore;
  }
  return least;
}

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
