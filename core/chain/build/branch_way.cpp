#include "chain/build/branch_way.h"

#include "chain/part/move.h"

#include <algorithm>

namespace riserun::chain {

using What = PortFollower::What;

namespace {

std::size_t joint_onto(const Assembly& assembly, bool to_target, std::size_t outer) {
  const auto joint = std::find_if(assembly.joints.begin(), assembly.joints.end(),
                                  [&](const auto& j) { return j.to_target == to_target && j.outer == outer; });
  return static_cast<std::size_t>(joint - assembly.joints.begin());
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

}  // namespace riserun::chain
