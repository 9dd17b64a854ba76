// Which branched assembly is found, rule by rule, in worlds of a few parts.
#include "chain/ask/assembly.h"
#include "chain/ask/needs.h"
#include "chain/finder.h"
#include "quantity/input_error.h"
#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing::best_tree_test {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

const char* const kShop = R"(
  nipple 1: 1 A male, 1 A male, 100c
  nipple 3/4: 3/4 A male, 3/4 A male, 90c
  nipple 1/2: 1/2 A male, 1/2 A male, 80c
  bushing: 1 A male, 1/2 A female, 120c, bushing
  tee 1: 1 A female, 1 A female, 1 A female, 500c
  reducing tee: 1 A female, 1 A female, 1/2 A female, 650c
  cross 1: 1 A female, 1 A female, 1 A female, 1 A female, 900c
  plug 1: 1 A male, 60c
  union 1: 1 A female, 1 A female, 900c, union
  ball valve: 1 A female, 1 A male, 1500c, device, brass
)";

AssemblyRequest ask(const SmallWorld& shop, const std::string& base, const std::vector<std::string>& targets,
                    Order order = Order::parts) {
  AssemblyRequest request;
  request.rules.from = shop.end(base);
  request.rules.order = order;
  for (const std::string& target : targets) request.targets.push_back(shop.end(target));
  return request;
}

std::string written(const SmallWorld& shop, const Assembly& assembly, std::size_t row) {
  const RunPart& part = assembly.parts[row];
  std::string text = shop.catalog().part(part.part).name + (part.from_bin ? "*" : "") + " (";
  bool first = true;
  for (const Follower& follower : part.ports) {
    if (follower.what == Follower::What::inner) continue;
    text += first ? "" : ", ";
    first = false;
    if (follower.what == Follower::What::part) text += written(shop, assembly, follower.row);
    if (follower.what == Follower::What::end) text += std::to_string(follower.row + 1);
    if (follower.what == Follower::What::plug)
      text += "[" + shop.catalog().part(follower.plug).name + (follower.from_bin ? "*" : "") + "]";
  }
  return text + ")";
}

/// A part with what follows in brackets, port by port: numbers for targets, plugs in square brackets, * from the bin.
std::string found(const SmallWorld& shop, const AssemblyRequest& request) {
  const AssemblyAnswer answer = find_assembly(shop.catalog(), request);
  if (const auto* none = std::get_if<NoAssembly>(&answer)) return "none: " + said(none->reason);
  return written(shop, std::get<Assembly>(answer), 0);
}

NoAssembly refusal(const SmallWorld& shop, const AssemblyRequest& request) {
  return std::get<NoAssembly>(find_assembly(shop.catalog(), request));
}

TEST(Branched, ATeeLeadsToTwoTargets) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1 A male", "1 A male"})), "tee 1 (1, 2)");
}

TEST(Branched, WhatIsToStandBeforeAllTargetsDoesIfItCan) {
  const SmallWorld shop(R"(
    reducing tee: 1 A female, 1 A female, 1/2 A female, 650c
    big valve: 1 A female, 1 A male, 1500c, valve
    small valve: 1/2 A female, 1/2 A male, 700c, valve
  )");
  AssemblyRequest request = ask(shop, "1 A male", {"1/2 A male", "1 A male"}, Order::price);
  request.rules.needs = {shop.need("valve", {"big valve", "small valve"})};
  EXPECT_EQ(found(shop, request), "reducing tee (2, small valve (1))");
  request.rules.needs = before_all_targets(shop.catalog(), request.rules.needs);
  EXPECT_EQ(found(shop, request), "big valve (reducing tee (2, 1))");
  request.rules.needs.front() = shop.need("valve", {"small valve"});
  request.rules.needs = before_all_targets(shop.catalog(), request.rules.needs);
  const Assembly assembly = std::get<Assembly>(find_assembly(shop.catalog(), request));
  EXPECT_EQ(written(shop, assembly, 0), "reducing tee (2, small valve (1))");
  std::vector<std::string> cautions;
  for (const quantity::Fact& caution : assembly.cautions) cautions.push_back(said(caution));
  EXPECT_THAT(cautions, Contains(HasSubstr("not behind the small valve: target 2")));
}

TEST(Branched, AReducingTeeIsTakenWhereItSavesABushing) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1/2 A male", "1 A male"})), "reducing tee (2, 1)");
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1/2 A male", "1 A male"}, Order::price)), "tee 1 (2, bushing (1))");
}

TEST(Branched, FewestPartsMayMeanAPlugInACross) {
  const SmallWorld shop(R"(
    cross 1: 1 A female, 1 A female, 1 A female, 1 A female, 100c
    plug 1: 1 A male, 60c
  )");
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1 A male", "1 A male"})), "cross 1 (1, 2, [plug 1])");
}

TEST(Branched, WithoutAPlugASparePortCannotStayOpen) {
  const SmallWorld shop("cross 1: 1 A female, 1 A female, 1 A female, 1 A female, 100c");
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1 A male", "1 A male"})),
            "none: every assembly leaves a port open, and no plug or cap that the rules allow goes on 1 FA");
  EXPECT_EQ(found(shop, ask(shop, "1 A male", {"1 A male", "1 A male", "1 A male"})), "cross 1 (1, 2, 3)");
}

TEST(Branched, TwoTargetsThatOnlyATeeCouldJoinAreNamedTogether) {
  const SmallWorld shop(R"(
    coupling 1: 1 A female, 1 A female, 100c
    nipple 1: 1 A male, 1 A male, 100c
  )");
  const NoAssembly none = refusal(shop, ask(shop, "1 A male", {"1 A male", "1 A female"}));
  EXPECT_THAT(none.targets, ElementsAre(0u, 1u));
  EXPECT_EQ(said(none.reason),
            "target 1 (1 MA) and target 2 (1 FA) can each be reached from the base (1 MA), but no tee, cross or other "
            "part with ports enough leads to them together");
}

TEST(Branched, TwoGaugesAreTwoTargets) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(found(shop, ask(shop, "1 A female", {"1/2 A male", "1/2 A male", "1 A male"})),
            "nipple 1 (cross 1 (3, bushing (1), bushing (2)))");
}

TEST(Branched, ABinPartIsFreeOnlyAsOftenAsItIsThere) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1/2 A male", "1/2 A male", "1 A male"}, Order::bin);
  request.rules.bin.items = {{shop.part("reducing tee"), 1}, {shop.part("nipple 1"), 3}};
  // One reducing tee there, one to be bought; the nipple between them is free.
  const auto answer = find_assembly(shop.catalog(), request);
  const Assembly& assembly = std::get<Assembly>(answer);
  int reducing_tees_from_bin = 0;
  for (const RunPart& part : assembly.parts)
    reducing_tees_from_bin += part.part == shop.part("reducing tee") && part.from_bin ? 1 : 0;
  EXPECT_LE(reducing_tees_from_bin, 1);
  EXPECT_EQ(assembly.buy_count, 1);
  EXPECT_EQ(assembly.price.cents(), 650);
}

TEST(Branched, DevicesArePutInOnlyWhereANeedAsksForThem) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1 A male", "1 A female"});
  EXPECT_EQ(found(shop, request), "tee 1 (1, nipple 1 (2))");
  request.rules.needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(found(shop, request), "ball valve (tee 1 (1, nipple 1 (2)))");
}

TEST(Branched, BannedPartsAndRatingsHold) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A male", {"1/2 A male", "1 A male"});
  request.rules.banned.assign(shop.catalog().parts().size(), false);
  request.rules.banned[shop.part("reducing tee").row] = true;
  EXPECT_EQ(found(shop, request), "tee 1 (2, bushing (1))");
  request.rules.rating = psig(400.0);
  EXPECT_THAT(said(refusal(shop, request).mends), ElementsAre("accept a rating below 400 psi"));
}

TEST(Branched, BetweenFixedEndsThereIsAUnionOnEachWay) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A female", {"1 A male", "1 A female"});
  request.rules.from.freedom = Freedom::fixed;
  EXPECT_EQ(found(shop, request), "nipple 1 (tee 1 (1, nipple 1 (2)))");
  request.targets[1].freedom = Freedom::fixed;
  EXPECT_THAT(found(shop, request), HasSubstr("union 1"));
  request.targets[0].freedom = Freedom::fixed;
  const std::string all_fixed = found(shop, request);
  EXPECT_EQ(all_fixed.find("union 1") == all_fixed.rfind("union 1"), false) << all_fixed;
  request.rules.banned.assign(shop.catalog().parts().size(), false);
  request.rules.banned[shop.part("union 1").row] = true;
  EXPECT_THAT(said(refusal(shop, request).reason),
              HasSubstr("both ends held, so that neither turns; none of the parts that are ruled out"));
}

TEST(Branched, TheBuildOrderGoesOutwardsWithTargetsLast) {
  const SmallWorld shop(kShop);
  AssemblyRequest request = ask(shop, "1 A female", {"1/2 A male", "1 A male"});
  request.rules.from.freedom = Freedom::fixed;
  const auto answer = find_assembly(shop.catalog(), request);
  std::vector<std::string> texts;
  for (const BuildStep& step : std::get<Assembly>(answer).steps)
    texts.push_back(report::say(step.what, UnitSystem::inch));
  EXPECT_THAT(texts,
              ElementsAre("Screw part 1 (nipple 1) into the base (1 FA): turn part 1 hand-tight, then 1-1/2 to 3 turns "
                          "more; the base stays still by itself. Tape on the male thread.",
                          "Screw part 2 (reducing tee) onto part 1 (nipple 1): turn part 2 hand-tight, then 1-1/2 to 3 "
                          "turns more; hold part 1 with a second wrench. Stop within the last turn with its side port "
                          "facing where it is wanted; it swings 0.8 in clear of the joint's axis. Seal as in step 1.",
                          "Screw target 2 (1 MA) into part 2 (reducing tee): turn target 2 hand-tight, then 1-1/2 to 3 "
                          "turns more; hold part 2 with a second wrench. Seal as in step 1.",
                          "Screw target 1 (1/2 MA) into part 2 (reducing tee): turn target 1 hand-tight, then 1-1/2 to "
                          "3 turns more; hold part 2 with a second wrench. Seal as in step 1."));
}

TEST(Branched, ANarrowWayIsSaidBecauseOfReliefValves) {
  const SmallWorld small(R"(
    bell: 1/2 A female, 1 A female, 100c
    tee 1: 1 A male, 1 A female, 1 A male, 500c
  )");
  const AssemblyRequest request = ask(small, "1/2 A male", {"1 A male", "1 A female"});
  const auto answer = find_assembly(small.catalog(), request);
  EXPECT_THAT(
      report::say_all(std::get<Assembly>(answer).cautions, UnitSystem::inch),
      Contains("the way narrows to 1/2 to target 1 (1 MA), to 1/2 to target 2 (1 FA): a gauge does not mind, but "
               "a relief valve must never be fed through less than the size of its own inlet, nor through a "
               "valve"));
}

TEST(Branched, ATargetThatNothingLeadsToIsNamedWithWhatWouldLeadThere) {
  const SmallWorld shop(kShop);
  const NoAssembly none = refusal(shop, ask(shop, "1 A male", {"1 A male", "3/4 B male", "1 A female"}));
  EXPECT_THAT(none.targets, ElementsAre(1u));
  EXPECT_EQ(said(none.reason),
            "target 2 (3/4 MB) cannot be reached from the base (1 MA): no run of stocked parts leads from 1 MA to 3/4 "
            "MB");
  ASSERT_TRUE(none.way.has_value());
  EXPECT_TRUE(none.way->missing_part.has_value());
}

TEST(Branched, WhatAnAssemblyCannotBeAskedForIsBadInput) {
  const SmallWorld shop(kShop);
  const auto message = [&](const AssemblyRequest& request) -> std::string {
    try {
      find_assembly(shop.catalog(), request);
    } catch (const quantity::InputError& error) {
      return error.problems().front().message;
    }
    return "no error";
  };
  EXPECT_EQ(message(ask(shop, "1 A male", {"1 A male"})), "an assembly joins one port to 2 to 8 others, not to 1");
  EXPECT_EQ(message(ask(shop, "1 A male", std::vector<std::string>(9, "1 A male"))),
            "an assembly joins one port to 2 to 8 others, not to 9");
  EXPECT_EQ(message(ask(shop, "1 A male", {"1 A male", "1 A male"}, Order::length)),
            "an assembly has no one length and no one head to be weighed by, as each branch has its own; allowed "
            "orders: line, parts, price, bin");
  AssemblyRequest sliding = ask(shop, "1 A male", {"1 A male", "1 A male"});
  sliding.targets[1].freedom = Freedom::sliding;
  EXPECT_EQ(message(sliding), "an end of an assembly is loose or fixed; sliding and spinning ends are for chains");
}

}  // namespace
}  // namespace riserun::chain::testing::best_tree_test
