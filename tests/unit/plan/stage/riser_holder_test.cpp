// A riser smaller than its bung: what holds it, and how much lower it then hangs.
#include "report/card/make_card.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

std::string small_riser() { return with(kReady, "riser: {bung: riser bung}", "riser: {bung: riser bung, pipe: 3/4}"); }

TEST(SmallRiser, IsHeldByABushingFromInside) {
  const Plan plan = plan_of_text(small_riser());
  ASSERT_TRUE(plan.riser.holder);
  ASSERT_EQ(plan.riser.holder->parts.size(), 1u);
  const PartId bushing = plan.riser.holder->parts[0].part;
  EXPECT_EQ(plan.catalog->part(bushing).size, "1 x 3/4");
  EXPECT_FALSE(has(plan, "riser_falls_through_bung"));
  EXPECT_EQ(plan.riser.riser.insertion, reservoir::Insertion::from_inside_before_lid_closes);
  const auto listed = std::find_if(plan.list.buy.begin(), plan.list.buy.end(),
                                   [&](const ListItem& item) { return item.part == bushing; });
  ASSERT_NE(listed, plan.list.buy.end());
  EXPECT_EQ(listed->used_for.front(), "riser");
}

// Height less what the bung stands in, the bushing's body without its thread, and the clearance; and the riser's own
// thread on top. Make-up of 1 and 3/4 NPT by ASME B1.20.1: hand-tight and three turns (E1 of L1 and L3).
TEST(SmallRiser, HangsLowerByTheBushing) {
  const Plan plan = plan_of_text(small_riser());
  ASSERT_TRUE(plan.riser.holder);
  const catalog::Part& bushing = plan.catalog->part(plan.riser.holder->parts[0].part);
  const double one = 0.400 + 3.0 / 11.5;
  const double three_quarters = 0.339 + 3.0 / 14.0;
  const double body = in_inches(bushing.ports[0].reach + bushing.ports[1].reach) - one;
  const reservoir::RiserRequest& asked = plan.riser.request;
  const double bung = in_inches(asked.bung_length) / 2.0;
  const double clearance = in_inches(plan.riser.riser.clearance);
  EXPECT_NEAR(in_inches(plan.riser.riser.cut_length), 14.0 - bung - body - clearance + three_quarters, 2e-3);
}

TEST(SmallRiser, IsInTheWatersWay) {
  const auto bushings = [](const Plan& plan) {
    const auto elements = plan.line.elements();
    return std::count_if(elements.begin(), elements.end(), [](const hydraulics::LineElement& element) {
      return element.name.find("1 x 3/4 hex bushing") != std::string::npos;
    });
  };
  EXPECT_GE(bushings(plan_of_text(small_riser())), 1);
}

TEST(SmallRiser, FallsThroughWhereNothingCanBePutInFromInside) {
  const Plan plan = plan_of_text(with(small_riser(), "  charge: 9 in", "  charge: 9 in\n  lid: welded"));
  EXPECT_FALSE(plan.riser.holder);
  EXPECT_TRUE(has(plan, "riser_falls_through_bung"));
  EXPECT_TRUE(std::any_of(plan.list.buy.begin(), plan.list.buy.end(),
                          [](const ListItem& item) { return item.name == "double-tapped bushing"; }));
}

// Both are bought unless the job says that they are there: a lid seldom has a coupling wider than its riser.
TEST(RiserInABushing, HasItAndTheWiderCouplingRoundItOnTheList) {
  const auto bought = [](const std::string& there, const std::string& called) {
    const Plan plan = ready_with("riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                                 "riser bung: {port: 1 FNPT, bung: double-tapped bushing, where: lid" + there + "}");
    return std::count_if(plan.list.buy.begin(), plan.list.buy.end(), [&](const ListItem& item) {
      return (item.name + " " + item.size).find(called) != std::string::npos;
    });
  };
  for (const char* there : {"", ", welded in: no"}) {
    EXPECT_EQ(bought(there, "double-tapped bushing"), 1) << there;
    EXPECT_EQ(bought(there, "full coupling"), 1) << there;
  }
  EXPECT_EQ(bought(", welded in: yes", "double-tapped bushing"), 0);
  EXPECT_EQ(bought(", welded in: yes", "full coupling"), 0);
}

// Into a tank that is shut the riser goes from above, after the test, and the card says so.
TEST(RiserInABushing, OfAClosedLidIsOnTheCard) {
  const Plan plan = plan_of_text(with(with(kReady, "  charge: 9 in", "  charge: 9 in\n  lid: welded"),
                                      "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                                      "riser bung: {port: 1 FNPT, bung: double-tapped bushing, where: lid}"));
  const report::Card card = report::card_of(plan, UnitSystem::inch);
  const auto row = std::find_if(card.work.begin(), card.work.end(),
                                [](const report::CardRow& each) { return each.name == "riser"; });
  ASSERT_NE(row, card.work.end());
  EXPECT_NE(row->value.find("let the riser down through riser bung"), std::string::npos) << row->value;
  const report::Card open = report::card_of(ready(), UnitSystem::inch);
  EXPECT_TRUE(std::none_of(open.work.begin(), open.work.end(),
                           [](const report::CardRow& each) { return each.name == "riser"; }));
}

TEST(Riser, OfTheBungsOwnSizeNeedsNoHolder) { EXPECT_FALSE(plan_of_text(kReady).riser.holder); }

std::string welded_riser() {
  const std::string welded = with(kReady, "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                                  "riser bung: {port: 1 MNPT, bung: welded riser, where: lid, face height: 17 in}");
  return with(welded, "gap: 14-3/8 in, ", "");
}

/// The riser's row of the cut list.
const CutItem& riser_cut(const Plan& plan) {
  return *std::find_if(plan.list.cut.begin(), plan.list.cut.end(),
                       [](const CutItem& item) { return item.used_for == "riser"; });
}

// Its length is told once: the whole pipe, from over the lid down to the clearance, one thread at its top.
TEST(WeldedRiser, IsOnePipeWhereverItIsTold) {
  const std::string welded = welded_riser();
  const Plan plan = plan_of_text(welded);
  const Length whole = inches(17.0) - plan.riser.riser.end_height;
  EXPECT_NEAR(in_inches(plan.riser.riser.cut_length), in_inches(whole), 1e-6);
  EXPECT_EQ(riser_cut(plan).length, plan.riser.riser.cut_length);
  EXPECT_EQ(riser_cut(plan).datum, "from the threaded end");
  const auto step = std::find_if(plan.work.steps.begin(), plan.work.steps.end(), [](const WorkStep& each) {
    return each.what.code == "work_cut_welded_riser_of_stock";
  });
  ASSERT_NE(step, plan.work.steps.end());
  EXPECT_EQ(std::get<Length>(step->what.values[1]), whole);
  EXPECT_NEAR(in_inches(std::get<Length>(step->what.values[2])), in_inches(whole) - 3.0, 1e-6);
  // What stands over the lid is part of the gap's lower end, too: without a height it is assumed, and said.
  const Plan unsaid = plan_of_text(with(welded, ", face height: 17 in", ""));
  ASSERT_TRUE(unsaid.connections.front().gap);
  EXPECT_NEAR(in_inches(*unsaid.connections.front().gap), 30.0 - 17.0, 1e-6);
  EXPECT_TRUE(std::any_of(unsaid.assumptions.begin(), unsaid.assumptions.end(), [](const Assumption& assumption) {
    return assumption.fact.code == "welded_riser_above_lid";
  }));
}

// A female port over it is a coupling on its upper thread: bought, screwed on once the weld is cold, welded to nothing.
TEST(WeldedRiser, CarriesItsCouplingOnItsUpperThread) {
  const auto told = [](const std::string& job) {
    const Plan plan = plan_of_text(job);
    std::vector<std::string> lines;
    for (const WorkStep& step : plan.work.steps)
      if (step.what.code == "work_bungs" || step.what.code == "work_weld_riser" ||
          step.what.code == "work_coupling_on_riser")
        lines.emplace_back(step.what.code);
    for (const ListItem& item : plan.list.buy)
      for (const std::string& use : item.used_for)
        if (use.find("riser bung") != std::string::npos) lines.push_back(item.name + ": " + use);
    return lines;
  };
  const std::string female = with(welded_riser(), "1 MNPT, bung: welded riser", "1 FNPT, bung: welded riser");
  const std::string coupling = "1 full coupling, class 3000: screw on: riser bung";
  EXPECT_THAT(told(female), testing::ElementsAre("work_weld_riser", "work_coupling_on_riser", coupling));
  const std::string unwelded = with(female, "where: lid, face", "where: lid, welded in: no, face");
  EXPECT_THAT(told(unwelded), testing::ElementsAre("work_weld_riser", "work_coupling_on_riser", coupling));
  EXPECT_THAT(told(welded_riser()), testing::ElementsAre("work_weld_riser"));
}

// One thread is enough for it: what a job before has left of a pipe, and only then a pipe that is bought.
TEST(WeldedRiser, IsCutFromWhatIsLeftOfAPipe) {
  const auto with_bin = [](const std::string& row) {
    return plan_of_text(welded_riser() + "bin: [{part: 1 x 24 threaded pipe black iron, " + row + "}]\n");
  };
  const Plan left = with_bin("length: 17 in, ends: one thread");
  ASSERT_TRUE(left.riser.stock_part);
  EXPECT_TRUE(left.riser.stock_from_bin);
  EXPECT_EQ(left.catalog->part(*left.riser.stock_part).sawn_ends, 1);
  EXPECT_EQ(riser_cut(left).length, left.riser.riser.cut_length);
  EXPECT_GT(riser_cut(left).offcut, Length{});
  // Too short, or without a thread: a pipe is bought.
  for (const char* row : {"length: 10 in, ends: one thread", "length: 17 in, ends: plain"}) {
    const Plan bought = with_bin(row);
    ASSERT_TRUE(bought.riser.stock_part) << row;
    EXPECT_FALSE(bought.riser.stock_from_bin) << row;
    EXPECT_TRUE(std::any_of(bought.list.buy.begin(), bought.list.buy.end(), [&](const ListItem& item) {
      return item.part == bought.riser.stock_part;
    })) << row;
  }
}

}  // namespace
}  // namespace riserun::plan
