// Runs between ports whose gap was measured: made of stock, cut or hose, on the lists, or refused.
#include "report/words/remark_words.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using ::testing::HasSubstr;

const std::string kWaterUp = "need: [union], held: {from: fixed, to: fixed}";

/// Under a table that stands high enough for their gaps.
Plan bench_connected(const std::string& connection) {
  return plan_of_text(with(with(kBench, kWaterUp, connection), "floor height: 30 in", "floor height: 32 in"));
}

const ConnectionPlan& water_up(const Plan& plan) { return plan.connections.at(0); }

double length_of(const catalog::Part& part) { return in_inches(part.ports[0].reach + part.ports[1].reach); }

/// Bodies less make-ups, reckoned anew.
double run_of(const Plan& plan) {
  double inches_long = 0.0;
  for (const chain::RunPart& link : water_up(plan).chain()->parts)
    inches_long += link.cut_length ? in_inches(*link.cut_length) : length_of(plan.catalog->part(link.part));
  for (const chain::RunJoint& joint : water_up(plan).chain()->joints) inches_long -= in_inches(joint.make_up);
  return inches_long;
}

TEST(SpanInJob, AStiffRunIsMadeToTheGap) {
  const Plan plan = bench_connected("need: [union], gap: 17-1/4 in, held: {from: fixed, to: fixed}");
  ASSERT_NE(water_up(plan).chain(), nullptr);
  const auto& fit = water_up(plan).chain()->span;
  ASSERT_TRUE(fit);
  EXPECT_EQ(fit->make, chain::SpanMake::stock_near);
  EXPECT_NEAR(run_of(plan), 17.25, in_inches(fit->band));
  EXPECT_NEAR(run_of(plan), in_inches(fit->lands), 1e-3);
}

TEST(SpanInJob, ACutPieceStandsOnTheCutListAndItsStickOnTheShoppingList) {
  const Plan plan = bench_connected(
      "need: [union], avoid: [nipple, PVC nipple, close nipple, hose], gap: 14-1/2 in, held: {from: fixed, to: fixed}");
  ASSERT_NE(water_up(plan).chain(), nullptr);
  EXPECT_NEAR(run_of(plan), 14.5, 1e-4);
  int cut = 0;
  for (const CutItem& item : plan.list.cut) {
    if (item.used_for != "water up" || item.stock.sold_as != "threaded both ends") continue;
    ++cut;
    EXPECT_EQ(item.datum, "from a threaded end; thread the sawn one");
  }
  EXPECT_EQ(cut, 2);  // for want of nipples
  const auto bought = [&](const ListItem& item) { return item.sold_as == "threaded both ends"; };
  EXPECT_GE(std::count_if(plan.list.buy.begin(), plan.list.buy.end(), bought), 1);
}

TEST(SpanInJob, AnEndThatSlidesNeedsNoFit) {
  const Plan plan = bench_connected("need: [union], gap: 17-1/4 in, held: {from: fixed, to: sliding}");
  ASSERT_NE(water_up(plan).chain(), nullptr);
  EXPECT_FALSE(water_up(plan).chain()->span);
}

TEST(SpanInJob, AGapThatNothingMakesIsRefusedWithTheNearestOne) {
  const Plan plan = bench_connected("need: [union], gap: 3/4 in, held: {from: fixed, to: fixed}");
  EXPECT_EQ(water_up(plan).chain(), nullptr);
  ASSERT_FALSE(refusals_of(plan).empty());
  const report::SaidFinding refusal = report::say(refusals_of(plan).front(), UnitSystem::inch);
  EXPECT_THAT(refusal.reason, HasSubstr("'water up' has no chain: the two ports can be joined, but not"));
  EXPECT_EQ(refusal.asked, "3/4 in");
  EXPECT_NE(refusal.allowed, "");
  EXPECT_THAT(refusal.mend, HasSubstr("move the ports"));
}

TEST(SpanInJob, AnAssumedGapIsNoMeasure) {
  const Plan plan = plan_of_text(kBench);
  ASSERT_NE(water_up(plan).chain(), nullptr);
  EXPECT_TRUE(water_up(plan).gap);
  EXPECT_FALSE(water_up(plan).chain()->span);
}

}  // namespace
}  // namespace riserun::plan
