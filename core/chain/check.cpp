#include "chain/check.h"

#include "quantity/input_error.h"

#include <fmt/format.h>

namespace riserun::chain {

namespace {

constexpr std::size_t kMostNeeds = 8;

}  // namespace

void check(const AssemblyRequest& request) {
  std::vector<quantity::Problem> problems;
  const auto say = [&](std::string message) { problems.push_back({"", 0, 0, std::move(message), ""}); };
  const std::size_t count = request.targets.size();
  if (count < kFewestTargets || count > kMostTargets)
    say(fmt::format("an assembly joins one port to {} to {} others, not to {}", kFewestTargets, kMostTargets, count));
  if (request.rules.order == Order::length || request.rules.order == Order::loss)
    say("an assembly has no one length and no one head to be weighed by, as each branch has its own; allowed orders: "
        "parts, price, bin");
  std::size_t needs = request.rules.needs.size();
  for (const BranchRules& branch : request.branches) needs += branch.needs.size();
  if (needs > kMostNeeds)
    say(fmt::format("at most {} needs, those of single branches included, not {}", kMostNeeds, needs));
  const auto known = [](const PortEnd& end) { return end.freedom == Freedom::loose || end.freedom == Freedom::fixed; };
  bool all_known = known(request.rules.from);
  for (const PortEnd& target : request.targets) all_known = all_known && known(target);
  if (!all_known) say("an end of an assembly is loose or fixed; sliding and spinning ends are for chains");
  if (!problems.empty()) throw quantity::InputError(std::move(problems));
}

}  // namespace riserun::chain
