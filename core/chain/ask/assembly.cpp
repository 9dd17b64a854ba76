#include "chain/ask/assembly.h"

namespace riserun::chain {

const BranchRules& AssemblyRequest::branch(std::size_t target) const {
  static const BranchRules kNothingAsked;
  return target < branches.size() ? branches[target] : kNothingAsked;
}

std::string name_of_base(const AssemblyRequest& request) {
  return request.rules.from.called.empty() ? "the base" : request.rules.from.called;
}

std::string name_of_target(const AssemblyRequest& request, std::size_t row) {
  const std::string& called = request.targets[row].called;
  return called.empty() ? "target " + std::to_string(row + 1) : called;
}

}  // namespace riserun::chain
