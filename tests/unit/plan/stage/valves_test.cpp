// A union stands beyond the valve, seen from the reservoir, where that costs nothing; else the plan says what it costs.
#include "report/words/say.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

constexpr const char* kUp = "from: riser bung, to: inlet, carries: water, need: [union]";

ConnectionPlan water_up(const std::string& words, const char* floor_height = "30 in") {
  return plan_of_text(
             with(with(kBench, kUp, words), "floor height: 30 in", std::string("floor height: ") + floor_height))
      .connections.front();
}

std::vector<std::string> said(const ConnectionPlan& plan) { return report::say_all(plan.cautions, UnitSystem::inch); }

std::vector<std::string> valve_and_opening(const ConnectionPlan& plan) {
  const std::shared_ptr<const Catalog>& catalog = shipped_catalog();
  std::vector<std::string> names;
  for (const chain::RunPart& link : plan.chain()->parts) {
    const std::string& family = catalog->family(catalog->part(link.part).family).name;
    const bool hose = catalog->part(link.part).name.find("hose, by the foot") != std::string::npos;
    if (hose || family == "union" || family == "ball valve") names.push_back(hose ? "hose" : family);
  }
  return names;
}

TEST(ValveSide, TheValveStaysWithTheReservoirWhicheverEndThatIs) {
  const ConnectionPlan up = water_up("from: riser bung, to: inlet, carries: water, need: [ball valve, union]");
  EXPECT_THAT(valve_and_opening(up), ElementsAre("ball valve", "union"));
  const ConnectionPlan down = water_up("from: inlet, to: riser bung, carries: water, need: [ball valve, union]");
  EXPECT_THAT(valve_and_opening(down), ElementsAre("union", "ball valve"));
  for (const ConnectionPlan& plan : {up, down}) EXPECT_THAT(said(plan), Not(Contains(HasSubstr("once it is opened"))));
}

TEST(ValveSide, AHoseBeyondTheValveDoesAsWellAsAUnion) {
  const ConnectionPlan up = water_up("from: riser bung, to: inlet, carries: water, need: [hose, ball valve]");
  EXPECT_THAT(valve_and_opening(up), ElementsAre("ball valve", "hose"));
  EXPECT_THAT(said(up), Not(Contains(HasSubstr("once it is opened"))));
}

// Where the gap is measured the run makes it all the same.
TEST(ValveSide, OfARunThatMakesAGapIsChosenToo) {
  for (const char* gap : {"20 in", "31-1/2 in"}) {
    const ConnectionPlan up = water_up(
        std::string("from: riser bung, to: inlet, carries: water, need: [hose, ball valve], gap: ") + gap, "46 in");
    ASSERT_TRUE(up.span) << gap;
    EXPECT_THAT(valve_and_opening(up), ElementsAre("ball valve", "hose")) << gap;
    EXPECT_THAT(said(up), Not(Contains(HasSubstr("once it is opened")))) << gap;
    EXPECT_FALSE(up.missed_gap) << gap;
  }
}

TEST(ValveSide, TheOtherWayRoundIsSaidWithItsCostAndItsMend) {
  const ConnectionPlan plan =
      water_up("from: riser bung, to: inlet, carries: water, need: [union, ball valve], in order: yes");
  EXPECT_THAT(valve_and_opening(plan), ElementsAre("union", "ball valve"));
  EXPECT_THAT(said(plan), Contains(HasSubstr(" is between the riser bung and the ")));
  EXPECT_THAT(said(plan), Contains(HasSubstr("once it is opened, the valve goes with the run and the reservoir "
                                             "stands open. To have the union beyond the valve, ask for valve and "
                                             "union in 'need', the valve first, with 'in order: yes'.")));
}

TEST(ValveSide, WithoutAValveThereIsNothingToSay) {
  EXPECT_THAT(said(water_up(kUp)), Not(Contains(HasSubstr("once it is opened"))));
}

}  // namespace
}  // namespace riserun::plan
