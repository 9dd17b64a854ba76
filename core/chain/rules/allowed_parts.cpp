#include "chain/rules/allowed_parts.h"

#include "chain/rules/rules.h"

namespace riserun::chain {

namespace {

bool is_allowed(const Rules& rules, const PlacedPart& placed) {
  const catalog::Part& part = rules.catalog().part(placed.part);
  if (!rules.admits(placed.part)) return false;
  if (!rules.buyable(placed.part) && rules.request().bin.count_of(placed.part) == 0) return false;
  if (placed.enter != placed.leave && !rules.admits_way(part, placed.enter, placed.leave)) return false;
  return rules.may_meet(part.material_at(placed.enter), placed.before.value_or(MaterialId{})) &&
         rules.may_meet(part.material_at(placed.leave), placed.behind.value_or(MaterialId{}));
}

}  // namespace

std::vector<bool> allowed_parts(const Catalog& catalog, const ChainRequest& request,
                                const std::vector<PlacedPart>& parts) {
  const Rules rules(catalog, request);
  std::vector<bool> allowed;
  allowed.reserve(parts.size());
  for (const PlacedPart& placed : parts) allowed.push_back(is_allowed(rules, placed));
  return allowed;
}

}  // namespace riserun::chain
