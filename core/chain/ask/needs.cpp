#include "chain/ask/needs.h"

#include <algorithm>
#include <utility>

namespace riserun::chain {

namespace {

using Parts = std::vector<PartId>;

Parts parts_of(const Need& need) {
  Parts parts = need.parts;
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

bool is_within(const Parts& narrow, const Parts& wide) {
  return std::includes(wide.begin(), wide.end(), narrow.begin(), narrow.end());
}

std::vector<Need> apart_in_any_order(std::vector<Need> needs) {
  std::vector<Parts> parts;
  parts.reserve(needs.size());
  for (const Need& need : needs) parts.push_back(parts_of(need));
  const std::size_t given = needs.size();
  for (std::size_t row = 0; row < given; ++row) {
    const bool known = std::find(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(row), parts[row]) !=
                       parts.begin() + static_cast<std::ptrdiff_t>(row);
    if (known) continue;  // what is within these parts has been counted
    const Need need = needs[row];
    for (const Parts& other : parts)
      if (other != parts[row] && is_within(other, parts[row])) needs.push_back(need);
  }
  return needs;
}

}  // namespace

bool takes_two_parts(const std::vector<PartId>& a, const std::vector<PartId>& b) {
  return is_within(a, b) || is_within(b, a);
}

std::vector<Need> told_apart(std::vector<Need> needs, bool in_order) {
  return in_order ? needs : apart_in_any_order(std::move(needs));
}

std::vector<Need> as_meant(const Catalog& catalog, std::vector<Need> needs, bool vacuum) {
  if (vacuum) return needs;
  const auto is_for_vacuum = [&](PartId part) { return catalog.family(catalog.part(part).family).for_vacuum; };
  for (Need& need : needs)
    if (!std::all_of(need.parts.begin(), need.parts.end(), is_for_vacuum)) std::erase_if(need.parts, is_for_vacuum);
  return needs;
}

bool acts_on_what_is_beyond(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  const catalog::Family& family = catalog.family(part.family);
  if (part.ports.size() != 2 || family.role == catalog::Role::connector) return false;
  return family.can_shut || part.arrow || part.one_way || family.role == catalog::Role::regulator ||
         family.role == catalog::Role::restrictor;
}

std::vector<Need> before_all_targets(const Catalog& catalog, std::vector<Need> needs) {
  for (Need& need : needs)
    need.before_all = std::all_of(need.parts.begin(), need.parts.end(),
                                  [&](PartId part) { return acts_on_what_is_beyond(catalog, part); });
  return needs;
}

void put_before_all(const Catalog& catalog, AssemblyRequest& request) {
  std::vector<Need>& needs = request.rules.needs;
  needs = before_all_targets(catalog, std::move(needs));
  const auto feeding = std::find_if(request.branches.begin(), request.branches.end(),
                                    [](const BranchRules& branch) { return branch.flow == BranchFlow::to_base; });
  if (feeding == request.branches.end()) return;
  for (Need& need : needs)
    if (std::exchange(need.before_all, false)) feeding->needs.push_back(std::exchange(need, Need{}));
  std::erase_if(needs, [](const Need& need) { return need.parts.empty(); });
}

Galvanic galvanic_meant(const Catalog& catalog, const ChainRequest& request) {
  if (request.from.material || request.to.material) return request.galvanic;
  const auto parts_metals = [&](const Need& need) {
    return std::all_of(need.parts.begin(), need.parts.end(),
                       [&](PartId part) { return catalog.part(part).dielectric; });
  };
  const bool is_asked_for = std::any_of(request.needs.begin(), request.needs.end(), parts_metals);
  return is_asked_for ? Galvanic::avoid : request.galvanic;
}

}  // namespace riserun::chain
