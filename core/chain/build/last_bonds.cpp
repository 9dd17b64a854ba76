#include "chain/build/last_bonds.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace riserun::chain {

namespace {

constexpr AsLast kAllAsLast[] = {AsLast::never, AsLast::pushed_together, AsLast::lengthwise, AsLast::without_turning,
                                 AsLast::nut};

}  // namespace

void choose_where_to_begin(BodyTree& tree) {
  const bool both = tree.is_chain() && std::any_of(tree.bonds.begin(), tree.bonds.end(),
                                                   [](const Bond& bond) { return bond.as_last >= AsLast::lengthwise; });
  bool any = false;
  for (std::size_t body = 0; body < tree.bodies.size(); ++body)
    any |= tree.bodies[body].first = tree.bodies[body].held || (both && !tree.is_part(body));
  if (!any) tree.bodies.front().first = true;
}

void choose_last_bonds(BodyTree& tree) {
  std::vector<std::size_t> group(tree.bodies.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  const auto begins = [&](std::size_t g) {
    for (std::size_t body = 0; body < tree.bodies.size(); ++body)
      if (group[body] == g && tree.bodies[body].first) return true;
    return false;
  };
  for (const AsLast as_last : kAllAsLast) {
    for (Bond& bond : tree.bonds) {
      if (bond.as_last != as_last) continue;
      const std::size_t kept = group[bond.inner];
      const std::size_t gone = group[bond.outer];
      bond.last = begins(kept) && begins(gone);
      if (!bond.last) std::replace(group.begin(), group.end(), gone, kept);
    }
  }
}

}  // namespace riserun::chain
