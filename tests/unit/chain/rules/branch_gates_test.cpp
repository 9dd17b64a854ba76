// The rules of single branches of an assembly, one by one, in worlds of a few parts.
#include "chain/ask/assembly.h"
#include "chain/finder.h"
#include "quantity/input_error.h"
#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing::branch_gates_test {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

const char* const kShop = R"(
  nipple 1: 1 A male, 1 A male, 100c
  nipple 1/2: 1/2 A male, 1/2 A male, 80c, bore 12
  coupling 1: 1 A female, 1 A female, 150c
  bushing: 1 A male, 1/2 A female, 120c, bushing, bore 12
  bell: 1 A female, 1/2 A female, 200c, bore 12
  tee 1: 1 A female, 1 A female, 1 A female, 500c
  tee 1/2: 1/2 A female, 1/2 A female, 1/2 A female, 300c, bore 12
  plug 1: 1 A male, 60c
  ball valve: 1 A female, 1 A male, 1500c, valve
  check valve: 1 A female, 1 A male, 1200c, valve, one way
  regulator: 1 A female, 1 A male, 2000c, valve, one way
  gauge 1/2: 1/2 A male, 900c, device, bore 2
  gauge 1: 1 A male, 1900c, device, bore 2
  relief 1/2: 1/2 A male, 2500c, device, bore 10
  relief 1: 1 A male, 2800c, device, bore 15
)";

AssemblyRequest ask(const SmallWorld& shop, const std::string& base, const std::vector<std::string>& targets) {
  AssemblyRequest request;
  request.rules.from = shop.end(base);
  for (const std::string& target : targets) request.targets.push_back(shop.end(target));
  request.branches.resize(targets.size());
  return request;
}

std::string written(const SmallWorld& shop, const Assembly& assembly, std::size_t row) {
  const RunPart& part = assembly.parts[row];
  std::string text = shop.catalog().part(part.part).name + " (";
  bool first = true;
  for (const Follower& follower : part.ports) {
    if (follower.what == Follower::What::inner) continue;
    text += first ? "" : ", ";
    first = false;
    if (follower.what == Follower::What::part) text += written(shop, assembly, follower.row);
    if (follower.what == Follower::What::plug) text += "plug";
    if (follower.what != Follower::What::end) continue;
    const RunEnd& end = assembly.ends[follower.row];
    text += std::to_string(follower.row + 1) + (end.device ? " " + shop.catalog().part(*end.device).name : "");
  }
  return text + ")";
}

std::string found(const SmallWorld& shop, const AssemblyRequest& request) {
  const AssemblyAnswer answer = find_assembly(shop.catalog(), request);
  if (const auto* none = std::get_if<NoAssembly>(&answer)) return "none: " + said(none->reason);
  return written(shop, std::get<Assembly>(answer), 0);
}

NoAssembly refusal(const SmallWorld& shop, const AssemblyRequest& request) {
  return std::get<NoAssembly>(find_assembly(shop.catalog(), request));
}

std::vector<bool> only(const SmallWorld& shop, const std::string& name) {
  std::vector<bool> rows(shop.catalog().parts().size(), false);
  rows[shop.part(name).row] = true;
  return rows;
}

TEST(BranchRules, ABoreIsAskedOfOneWayOnly) {
  const SmallWorld shop(R"(
    tee: 1 A female, 1 A female, 1 A female, 500c
    narrow tee: 1 A female, 1 A female, 1 A female, 100c, bore 8
    nipple: 1 A male, 1 A male, 100c
    narrow nipple: 1 A male, 1 A male, 50c, bore 8
  )");
  AssemblyRequest request = ask(shop, "1 A male", {"1 A female", "1 A female"});
  EXPECT_EQ(found(shop, request), "narrow tee (narrow nipple (1), narrow nipple (2))");
  request.branches[1].smallest_bore = millimetres(15.0);
  EXPECT_EQ(found(shop, request), "tee (narrow nipple (1), nipple (2))");
}

TEST(BranchRules, ADeviceStandsOnlyBeforeTheTargetThatAsksForIt) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A female"});
  request.branches[0].needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(found(shop, request), "tee 1 (ball valve (1), nipple 1 (2))");
  // The same asked for by both is a valve on each way: one before the tee would shut both at once.
  request.branches[1].needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(found(shop, request), "tee 1 (ball valve (1), ball valve (nipple 1 (2)))");
}

TEST(BranchRules, WhatOneWayAvoidsMayStandOnTheOthers) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A female"});
  request.rules.needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(found(shop, request), "ball valve (tee 1 (1, nipple 1 (2)))");
  request.branches[1].banned = only(shop, "ball valve");
  EXPECT_EQ(found(shop, request), "tee 1 (ball valve (1), nipple 1 (2))");
}

TEST(BranchRules, NothingThatShutsStandsBeforeAReliefValve) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A female", "1 A female"});
  request.rules.needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(found(shop, request), "ball valve (tee 1 (nipple 1 (1), nipple 1 (2)))");
  request.branches[0].relief = true;
  const std::string guarded = found(shop, request);
  EXPECT_EQ(guarded, "tee 1 (ball valve (nipple 1 (2)), nipple 1 (1))");
}

TEST(BranchRules, AReliefValveIsFedThroughNoSmallerSizeThanItsInlet) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1/2 A male", {"1/2 A male", "1 A male"});
  EXPECT_THAT(found(shop, request), HasSubstr("tee"));
  request.branches[1].relief = true;
  const NoAssembly none = refusal(shop, request);
  EXPECT_EQ(said(none.reason),
            "target 2 (1 MA) cannot be reached from the base (1/2 MA) as asked: every way to target 2 (1 MA) is "
            "smaller than the relief valve's own inlet; give it a port of its own size");
  EXPECT_THAT(said(none.mends), IsEmpty());
  request.branches[1].smallest_bore = millimetres(12.0);
  EXPECT_THAT(found(shop, request), HasSubstr("tee"));
}

TEST(BranchRules, TheDeviceThatSuitsTheWholeIsTaken) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A male"});
  request.targets[0].called = "the gauge";
  request.branches[0].devices = {{shop.part("gauge 1/2"), 0}, {shop.part("gauge 1"), 0}};
  EXPECT_EQ(found(shop, request), "tee 1 (1 gauge 1, 2)");
  request.rules.order = Order::price;  // 1/2 needs a bushing more, and is still cheaper
  EXPECT_EQ(found(shop, request), "tee 1 (2, bushing (1 gauge 1/2))");
  const Assembly assembly = std::get<Assembly>(find_assembly(shop.catalog(), request));
  EXPECT_EQ(assembly.part_count, 3);
  EXPECT_EQ(assembly.price.cents(), 500 + 120 + 900);
  request.rules.bin.items = {{shop.part("gauge 1"), 1}};
  EXPECT_EQ(found(shop, request), "tee 1 (1 gauge 1, 2)");
}

TEST(BranchRules, EachReliefValveOfAChoiceMindsItsOwnInlet) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1/2 A male", {"1/2 A male", "1/2 A male"});
  request.branches[1].relief = true;
  request.branches[1].devices = {{shop.part("relief 1"), 0}, {shop.part("relief 1/2"), 0}};
  EXPECT_EQ(found(shop, request), "tee 1/2 (1, 2 relief 1/2)");
  request.branches[1].devices = {{shop.part("relief 1"), 0}};
  EXPECT_THAT(found(shop, request), HasSubstr("smaller than the relief valve's own inlet"));
}

TEST(BranchRules, WhatFeedsTheBaseTurnsOneWayPartsRound) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A female", "1 A male"});
  request.branches[0].needs = {shop.need("regulator", {"regulator"})};
  const Assembly out = std::get<Assembly>(find_assembly(shop.catalog(), request));
  request.branches[0].flow = BranchFlow::to_base;
  const Assembly in = std::get<Assembly>(find_assembly(shop.catalog(), request));
  const auto enter = [&](const Assembly& assembly) {
    for (const RunPart& part : assembly.parts)
      if (part.part == shop.part("regulator")) return static_cast<int>(part.enter);
    return -1;
  };
  EXPECT_EQ(enter(out), 0);
  EXPECT_EQ(enter(in), 1);
  EXPECT_THAT(report::say_all(in.cautions, UnitSystem::inch), Contains(HasSubstr("one way only, towards the base, ")));
}

TEST(BranchRules, ATargetLooksStraightOnOrToASide) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A male"});
  for (const std::size_t up : {0u, 1u}) {
    request.branches[up].facing = Facing::straight_on;
    request.branches[1 - up].facing = Facing::to_a_side;
    EXPECT_EQ(found(shop, request), up == 0 ? "tee 1 (1, 2)" : "tee 1 (2, 1)");
  }
  request.branches[0].facing = Facing::straight_on;
  const NoAssembly none = refusal(shop, request);
  EXPECT_EQ(said(none.reason),
            "target 1 (1 MA) and target 2 (1 MA) cannot be joined to the base (1 MA) together: no way to target 1 (1 "
            "MA) lets it look straight on");
  EXPECT_THAT(said(none.mends), ElementsAre("let target 1 (1 MA) look anywhere", "let target 2 (1 MA) look anywhere"));
}

TEST(BranchRules, BehindAHoseNothingLooksStraightOn) {
  const SmallWorld shop(R"(
    tee: 1 A female, 1 A female, 1 A female, 500c
    hose: 1 A male, 1 A male, 300c, flexible
    coupling: 1 A female, 1 A female, 150c
  )");
  AssemblyRequest request = ask(shop, "1 A male", {"1 A female", "1 A male"});
  EXPECT_EQ(found(shop, request), "tee (2, hose (1))");
  request.branches[0].facing = Facing::straight_on;
  EXPECT_EQ(said(refusal(shop, request).reason),
            "target 1 (1 FA) and target 2 (1 MA) cannot be joined to the base (1 MA) together: no way to target 1 (1 "
            "FA) lets "
            "it look straight on");
}

TEST(BranchRules, ARefusalNamesTheBranchAndItsRule) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1/2 A male"});
  request.branches[1].smallest_bore = millimetres(25.4);
  const NoAssembly none = refusal(shop, request);
  EXPECT_THAT(none.targets, ElementsAre(1u));
  EXPECT_EQ(said(none.reason),
            "target 2 (1/2 MA) cannot be reached from the base (1 MA) as asked: every way to target 2 (1/2 MA) narrows "
            "below 1 in");
  EXPECT_THAT(said(none.mends), ElementsAre("accept a bore below 1 in on the way to target 2 (1/2 MA)"));
  request.branches[1].smallest_bore.reset();
  request.branches[1].needs = {shop.need("gauge", {"gauge 1"})};
  EXPECT_THAT(said(refusal(shop, request).reason),
              HasSubstr("no way to target 2 (1/2 MA) can hold the gauge asked for"));
  request.branches[1].needs.clear();
  request.branches[1].avoid = {"bushing", "bell"};
  request.branches[1].banned = only(shop, "bushing");
  request.branches[1].banned[shop.part("bell").row] = true;
  EXPECT_THAT(said(refusal(shop, request).mends),
              ElementsAre("let the way to target 2 (1/2 MA) pass what it is to avoid: bushing, bell"));
}

TEST(BranchRules, EightTargetsWithRulesAreAnswered) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", std::vector<std::string>(8, "1 A male"));
  request.branches[0].relief = true;
  request.branches[1].flow = BranchFlow::to_base;
  request.branches[1].needs = {shop.need("regulator", {"regulator"}), shop.need("check valve", {"check valve"})};
  request.branches[2].needs = {shop.need("ball valve", {"ball valve"})};
  request.branches[3].facing = Facing::straight_on;
  request.branches[4].facing = Facing::to_a_side;
  const AssemblyAnswer answer = find_assembly(shop.catalog(), request);
  ASSERT_TRUE(std::holds_alternative<Assembly>(answer));
  EXPECT_EQ(std::get<Assembly>(answer).ends.size(), 8u);
}

TEST(BranchRules, MoreThanEightNeedsInAllAreBadInput) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A male"});
  request.rules.needs.assign(5, shop.need("ball valve", {"ball valve"}));
  request.branches[0].needs.assign(4, shop.need("ball valve", {"ball valve"}));
  try {
    find_assembly(shop.catalog(), request);
    FAIL() << "it was taken";
  } catch (const quantity::InputError& error) {
    EXPECT_EQ(error.problems().front().message, "at most 8 needs, those of single branches included, not 9");
  }
}

}  // namespace
}  // namespace riserun::chain::testing::branch_gates_test
