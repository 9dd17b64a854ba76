#include "chain/branch_assemble.h"
#include "chain/cautions.h"

#include <algorithm>

namespace riserun::chain {

using What = PortFollower::What;

namespace {

std::size_t joint_onto(const Assembly& assembly, bool to_target, std::size_t outer) {
  const auto joint = std::find_if(assembly.joints.begin(), assembly.joints.end(),
                                  [&](const auto& j) { return j.to_target == to_target && j.outer == outer; });
  return static_cast<std::size_t>(joint - assembly.joints.begin());
}

/// The way from the base to one target, with what is plugged beside it; ports that branch off are left out.
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

}  // namespace

void add_branch_cautions(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly) {
  std::vector<Run> runs;
  for (std::size_t target = 0; target < request.targets.size(); ++target) {
    Run& run = runs.emplace_back(Run{request.rules, branch_to(assembly, target)});
    run.request.from.called = name_of_base(request);
    run.request.to = request.targets[target];
    run.request.to.called = name_of_target(request, target);
  }
  assembly.cautions = cautions_of(catalog, runs);
}

}  // namespace riserun::chain
