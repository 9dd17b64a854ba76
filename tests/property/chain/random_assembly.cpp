#include "property/chain/random_assembly.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::chain::testing {

namespace {

PartId random_part(Dice& dice, const catalog::Catalog& catalog) {
  return {static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))};
}

std::vector<PartId> random_parts(Dice& dice, const catalog::Catalog& catalog, int least = 1, int most = 4) {
  std::vector<PartId> parts;
  for (int count = dice.between(least, most); count > 0; --count) parts.push_back(random_part(dice, catalog));
  return parts;
}

BranchRules random_rules(Dice& dice, const catalog::Catalog& catalog) {
  BranchRules rules;
  if (dice.chance(25)) rules.flow = BranchFlow::to_base;
  if (dice.chance(40)) rules.facing = dice.chance(50) ? Facing::straight_on : Facing::to_a_side;
  if (dice.chance(15)) rules.smallest_bore = millimetres(dice.one_of({15.0, 20.0}));
  rules.relief = dice.chance(20);
  for (int percent = 40; dice.chance(percent) && rules.needs.size() < 3; percent = 60) {
    const bool again = !rules.needs.empty() && dice.chance(25);
    rules.needs.push_back(again ? rules.needs.front() : Need{"own need", random_parts(dice, catalog, 3, 7)});
    // The same, or one within it.
    if (again && rules.needs.back().parts.size() > 1 && dice.chance(50)) rules.needs.back().parts.pop_back();
  }
  rules.needs_in_order = dice.chance(60);
  if (dice.chance(20)) {
    rules.banned.assign(catalog.parts().size(), false);
    for (const PartId part : random_parts(dice, catalog)) rules.banned[part.row] = true;
  }
  if (!dice.chance(25)) return rules;
  for (const PartId part : random_parts(dice, catalog)) {
    const auto known = [&](const catalog::PortUse& use) { return use.part == part; };
    if (std::any_of(rules.devices.begin(), rules.devices.end(), known)) continue;
    for (std::uint8_t port = 0; port < catalog.part(part).ports.size() && port < 2; ++port)
      rules.devices.push_back({part, port});
  }
  return rules;
}

}  // namespace

catalog::Catalog with_branching_parts(const catalog::Catalog& base, Dice& dice) {
  catalog::CatalogBuilder builder(base);
  const int types = static_cast<int>(base.port_types().size());
  const int count = dice.between(3, 7);
  for (int i = 0; i < count; ++i) {
    catalog::Part part;
    part.id = part.name = std::string(1, static_cast<char>('a' + dice.below(26))) + "x" + std::to_string(i);
    part.family = {static_cast<std::uint32_t>(dice.chance(90) ? 0 : 1)};
    part.material = {static_cast<std::uint32_t>(dice.one_of({0, 1, 1, 3}))};
    const int ports = dice.one_of({1, 1, 3, 3, 3, 4});
    if (ports == 1) part.family.row += 4;
    const catalog::PortTypeId run{static_cast<std::uint32_t>(dice.below(types))};
    for (int port = 0; port < ports; ++port) {
      const catalog::PortTypeId own{static_cast<std::uint32_t>(dice.below(types))};
      part.ports.push_back(
          {dice.chance(60) ? run : own, millimetres(15.0), millimetres(20.0), dice.one_of({0.0, 90.0, 180.0})});
    }
    part.price = cents(dice.one_of({0, 100, 100, 150}));
    part.rating = psig(150.0);
    part.stocked = dice.chance(90);
    builder.add(std::move(part));
  }
  return std::move(builder).build();
}

AssemblyRequest random_assembly(Dice& dice, const catalog::Catalog& catalog) {
  AssemblyRequest request;
  request.rules = random_request(dice, catalog);
  request.rules.most_parts.reset();  // is for one run, as is an order of needs
  request.rules.needs_in_order = false;
  const bool held = dice.chance(40);
  const auto freedom = [&] { return held && dice.chance(60) ? Freedom::fixed : Freedom::loose; };
  if (dice.chance(75)) request.rules.needs.clear();
  if (dice.chance(50)) request.rules.room.reset();
  if (dice.chance(50)) request.rules.most_bushings.reset();
  request.rules.from.freedom = freedom();
  const int targets = dice.one_of({2, 2, 2, 3, 3, 4});
  const bool by_branch = dice.chance(60);
  for (int i = 0; i < targets; ++i) {
    if (i > 0 && dice.chance(30)) {
      request.targets.push_back(request.targets.back());
      request.branches.push_back(request.branches.back());
      continue;
    }
    request.branches.push_back(by_branch && dice.chance(60) ? random_rules(dice, catalog) : BranchRules{});
    const ChainRequest other = random_request(dice, catalog);
    request.targets.push_back(dice.chance(50) ? other.to : other.from);
    request.targets.back().freedom = freedom();
  }
  // More needs than that, and to try all ways to meet them takes long.
  std::size_t needs = request.rules.needs.size();
  for (BranchRules& branch : request.branches) {
    if (needs + branch.needs.size() > 3) branch.needs.clear();
    needs += branch.needs.size();
  }
  return request;
}

/// The assembly as the exhaustive search lists it.
std::vector<TreeItem> as_list(const Assembly& assembly, const TreeTrial& trial) {
  std::vector<TreeItem> list;
  std::vector<int> row_of(assembly.parts.size(), -1);
  const auto end_item = [&](std::size_t target, int host, std::uint8_t port) {
    const RunEnd& end = assembly.ends.at(target);
    return TreeItem{
        TreeItem::What::target, end.device.value_or(PartId{}), trial.kind_of(target), end.device_port, host, port};
  };
  const auto add = [&](const auto& self, std::size_t row, int host, std::uint8_t host_port) -> void {
    const RunPart& part = assembly.parts.at(row);
    EXPECT_EQ(row_of[row], -1) << "a part hangs in two places";
    row_of[row] = static_cast<int>(list.size());
    list.push_back({TreeItem::What::part, part.part, 0, part.enter, host, host_port});
    for (std::size_t port = 0; port < part.ports.size(); ++port) {
      const auto at = static_cast<std::uint8_t>(port);
      const Follower& follower = part.ports[port];
      EXPECT_EQ(follower.what == Follower::What::inner, port == part.enter);
      if (follower.what == Follower::What::part) self(self, follower.row, row_of[row], at);
      if (follower.what == Follower::What::plug)
        list.push_back({TreeItem::What::plug, follower.plug, 0, 0, row_of[row], at});
      if (follower.what == Follower::What::end) list.push_back(end_item(follower.row, row_of[row], at));
    }
  };
  add(add, 0, -1, 0);
  EXPECT_EQ(std::count(row_of.begin(), row_of.end(), -1), 0) << "a part hangs nowhere";
  return list;
}

}  // namespace riserun::chain::testing
