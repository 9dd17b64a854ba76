// The walls of a job: what their sheet is counted as, that all of them are checked, and what holds them.
#include "plan/stage/walls.h"

#include "hydraulics/fluid.h"
#include "report/figures/figures.h"
#include "report/text/plan_text.h"
#include "report/words/list_words.h"
#include "reservoir/relief.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>
#include <string>
#include <vector>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

Plan of_sheet(const std::string& sheet) { return ready_with("10 ga steel", sheet); }

/// The panel that governs is the lid's or the floor's, whose limit with the water on it goes with t^2 and the yield.
double strength(const Plan& plan) {
  const reservoir::PanelResult& weakest = plan.walls.at_set.panels[plan.walls.at_set.weakest];
  return in_psi(plan.walls.limit) + in_psi(weakest.panel.water);
}

// 10 ga: 0.1265 in of 30 ksi, where nominal A36 has 0.1345 in and 36 ksi.
TEST(Sheet, PlainTenGaugeIsThinAndWeak) {
  const double nominal = strength(of_sheet("0.1345 in a36"));
  EXPECT_NEAR(strength(ready()) / nominal, std::pow(0.1265 / 0.1345, 2) * 30.0 / 36.0, 1e-3);
  EXPECT_NEAR(strength(ready()) / nominal, 0.74, 0.005);
  EXPECT_NEAR(strength(of_sheet("10 ga steel\n  yield: 36 ksi")) / nominal, std::pow(0.1265 / 0.1345, 2), 1e-3);
  EXPECT_NEAR(strength(of_sheet("10 ga A1011 grade 50")) / nominal, std::pow(0.1265 / 0.1345, 2) * 50.0 / 36.0, 1e-3);
  EXPECT_NEAR(strength(of_sheet("10 ga\n  metal: a36")) / nominal, std::pow(0.1265 / 0.1345, 2), 1e-3);
}

TEST(Sheet, WrittenAsAThicknessIsThatThick) {
  EXPECT_NEAR(strength(of_sheet("3/16 in steel")) / strength(of_sheet("0.1345 in a36")), std::pow(0.1875 / 0.1345, 2),
              1e-3);
}

TEST(Sheet, LosesItsCorrosionAllowance) {
  const Plan rusted = of_sheet("10 ga steel\n  corrosion allowance: 0.02 in");
  EXPECT_NEAR(strength(rusted) / strength(ready()), std::pow((0.1265 - 0.02) / 0.1265, 2), 1e-6);
  EXPECT_NEAR(in_inches(rusted.walls.panels.front().thickness), 0.1065, 1e-9);
  const Plan half = of_sheet("10 ga steel\n  corrosion allowance: 0.0632 in");  // more than half is a mistake
  EXPECT_NEAR(in_inches(half.walls.panels.front().thickness), 0.0633, 1e-9);
}

// A reservoir with nothing but stays between lid and floor every 6 in: its long side of 40 x 12 in governs. The plate
// is worked in tests/unit/reservoir/box_panels_test.cpp.
TEST(Walls, AreAllCheckedBesideAWidestBarePanel) {
  const std::string low = with(with(kReady, "height: 14 in", "height: 12 in"), "10 ga steel", "1/4 in steel");
  const Plan plan = plan_of_text(with(low, "supports: {baffles across: 2, baffles along: 1}",
                                      "supports: {widest bare panel: {length: 6 in, width: 6 in}}"));
  EXPECT_EQ(plan.walls.at_set.panels.size(), 4U);
  EXPECT_EQ(plan.walls.at_set.panels[plan.walls.at_set.weakest].panel.name, "long side panel");
  EXPECT_NEAR(in_psi(plan.walls.limit), 12.86 - 9.0 * 0.0361, 0.1);
}

TEST(Walls, OfAFloorThatLiesFlatHaveNoFloorPanel) {
  const Plan flat = ready_with("baffles along: 1", "baffles along: 1, floor carried: yes");
  EXPECT_EQ(flat.walls.at_set.panels.size(), 3U);
  EXPECT_GE(flat.walls.limit, ready().walls.limit);
  EXPECT_EQ(flat.walls.vacuum_limit, ready().walls.vacuum_limit);
}

TEST(Loads, AreThoseAtTheWallsLimitAndTheLidIsLiftedByEachPressure) {
  const Plan& plan = ready();
  const double lid = 40.0 * 20.0;
  EXPECT_EQ(plan.walls.loads_at, plan.walls.limit);
  EXPECT_NEAR(in_pounds_force(plan.walls.loads.each_row_across), in_psi(plan.walls.limit) * lid / 3.0, 0.1);
  EXPECT_NEAR(in_pounds_force(plan.walls.loads.each_row_along), in_psi(plan.walls.limit) * lid / 2.0, 0.1);
  EXPECT_NEAR(in_inches(plan.walls.weld_throat), in_psi(plan.walls.limit) * 40.0 / 3.0 / 18000.0, 1e-6);
  EXPECT_NEAR(in_pounds_force(plan.walls.lid_force), in_psi(plan.transfer.setting) * lid, 0.1);
  EXPECT_NEAR(in_pounds_force(plan.leak_test.lid_force), in_psi(plan.leak_test.pressure) * lid, 0.1);
  EXPECT_NEAR(in_pounds_force(plan.relief.lid_force_at_greatest), in_psi(plan.relief.greatest) * lid, 0.1);
}

TEST(Stays, AreNamedWhereTheWallsAreTooWeakAndThenTheyDo) {
  const std::string bare = with(kReady, "supports: {baffles across: 2, baffles along: 1}", "supports: {}");
  const Plan weak = plan_of_text(bare);
  ASSERT_TRUE(weak.walls.stays_for_use);
  const reservoir::StaySpacing& spacing = *weak.walls.stays_for_use;
  EXPECT_GE(in_psi(spacing.limit), 1.2 * in_psi(weak.relief.valves.front().full_flow));
  const auto bays = [](const reservoir::WallBays& wall) {
    return std::to_string(wall.along) + " x " + std::to_string(wall.across);
  };
  const std::string grid = bays(*spacing.supports.lid);
  const Plan built = plan_of_text(with(bare, "supports: {}",
                                       "supports: {lid bays: " + grid + ", floor bays: " + grid +
                                           ", lid stays: posts, long side bays: " + bays(*spacing.supports.long_side) +
                                           ", short side bays: " + bays(*spacing.supports.short_side) + "}"));
  EXPECT_NEAR(in_psi(built.walls.limit), in_psi(spacing.limit), 1e-9);
  EXPECT_THAT(open_in(built), testing::IsEmpty());
  EXPECT_FALSE(built.walls.stays_for_use);
  EXPECT_THAT(report::walls_text(weak, {}), HasSubstr("between lid and floor ("));
}

TEST(Passages, StandOnTheCutListWithEachBaffle) {
  const ShoppingList& list = ready().list;
  ASSERT_TRUE(ready().walls.passages);
  EXPECT_TRUE(ready().walls.passages->assumed);
  const auto baffle = [&](const char* which) -> const CutItem& {
    return *std::find_if(list.cut.begin(), list.cut.end(), [&](const CutItem& cut) { return cut.used_for == which; });
  };
  EXPECT_EQ(baffle("baffles across").quantity, 2);
  EXPECT_EQ(report::cut_size(baffle("baffles across"), UnitSystem::inch), "19-7/8 in x 13-15/16 in");
  EXPECT_EQ(baffle("baffles along").quantity, 3);
  EXPECT_EQ(report::cut_size(baffle("baffles along"), UnitSystem::inch), "13-1/8 in x 13-15/16 in");
  EXPECT_THAT(report::cut_remark(baffle("baffles across"), UnitSystem::inch),
              HasSubstr("crop both corners at the floor 1-1/2 in and both at the lid 3/4 in"));
  EXPECT_FALSE(ready_with("baffles along: 1", "baffles along: 1, passages: yes").walls.passages->assumed);
}

// What is printed as 4 to 1 holds for the rule that the limit comes from, posts as well.
TEST(Walls, OfPostsHaveTheFactorFourWhereTheySaySo) {
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {lid bays: 5 x 3, floor bays: 5 x 3, long side bays: 5 x 2, short side bays: "
                               "3 x 2, lid stays: posts}");
  ASSERT_TRUE(plan.walls.stayed);
  const double factor = reservoir::safety_factors(plan.walls.panels, plan.walls.metal, plan.walls.four_to_one,
                                                  psig(100.0), plan.walls.stayed)
                            .at_set_on_yield;
  EXPECT_NEAR(factor, 4.0, 1e-6);
}

// A valve that is there is what the section speaks of, not another one to buy.
TEST(Relief, OfTheJobIsTheOneThatTheSectionNames) {
  EXPECT_NEAR(in_psi(ready().relief.set_pressure), 2.0, 1e-9);
  EXPECT_LT(ready_with("set 2 psi", "set 2.5 psi").relief.set_pressure, psig(2.51));
}

// What the walls' limit counts on is on the cut list: how many bars, how long, and of which section.
TEST(Stays, StandOnTheCutListAsTheirBaysSay) {
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {lid bays: 4 x 2, long side bays: 3 x 1}");
  std::vector<std::string> cuts;
  for (const CutItem& cut : plan.list.cut)
    if (cut.used_for.find("stays") == 0)
      cuts.push_back(fmt::format("{} {} {}", cut.quantity, cut.used_for, report::cut_size(cut, UnitSystem::inch)));
  ASSERT_EQ(cuts.size(), 4u);
  EXPECT_THAT(cuts[0], testing::StartsWith("3 stays, lid 19-7/8 in x "));
  // The row along is in four between those three: two to the ends and two between bars.
  EXPECT_THAT(cuts[1], testing::StartsWith("2 stays, lid 9-"));
  EXPECT_THAT(cuts[2], testing::StartsWith("2 stays, lid 9-"));
  EXPECT_THAT(cuts[3], testing::StartsWith("4 stays, long sides 13-15/16 in x "));
  EXPECT_TRUE(std::any_of(plan.work.steps.begin(), plan.work.steps.end(),
                          [](const WorkStep& step) { return step.what.code == "work_stays"; }));
  const Plan bare = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {widest bare panel: {length: 12 in, width: 10 in}}");
  EXPECT_TRUE(std::any_of(bare.work.steps.begin(), bare.work.steps.end(),
                          [](const WorkStep& step) { return step.what.code == "work_stays_of_your_own"; }));
}

// Twice the riser's bore: of 2 in schedule 40, 2.067 in, 6.71 in2, so two corners with a leg of 2.59 in.
TEST(Passages, OfAWideRiserAreLarger) {
  const Plan wide = ready_with("riser bung: {port: 1 FNPT", "riser bung: {port: 2 FNPT");
  ASSERT_TRUE(wide.walls.passages);
  EXPECT_NEAR(in_inches(wide.walls.passages->at_floor), 2.75, 1e-9);
}

TEST(Passages, OfTightBafflesOrOfNoneAreNotCut) {
  for (const Plan& plan : {ready_with("baffles along: 1", "baffles along: 1, passages: no"),
                           ready_with("supports: {baffles across: 2, baffles along: 1}", "supports: {lid bays: 4 x 3}"),
                           ready_with("charge: 9 in", "charge: 9 in\n  lid: welded")})
    EXPECT_TRUE(std::none_of(plan.list.cut.begin(), plan.list.cut.end(),
                             [](const CutItem& cut) { return cut.used_for.find("baffles") == 0; }));
}

// Of four bays 20 in by 10 in round one post the panels stand more than the rule has for a span of 20 in; by hand of 10
// ga, 0.1285 in at the least: 0.1285^2 x 21.6 ksi x 2.1 / 20^2 = 1.87 psi, less 9 in of water, 0.325 psi.
TEST(Walls, NameTheSpanBetweenPostsWhereThatGoverns) {
  const Plan plan =
      ready_with("supports: {baffles across: 2, baffles along: 1}",
                 "supports: {lid bays: 2 x 2, floor bays: 2 x 2, lid stays: posts, long side bays: 4 x 2, "
                 "short side bays: 3 x 2}");
  ASSERT_TRUE(plan.walls.span_limit);
  EXPECT_LT(*plan.walls.span_limit, plan.walls.at_set.limit);
  EXPECT_NEAR(in_psi(*plan.walls.span_limit), in_psi(plan.walls.limit), 1e-9);
  EXPECT_EQ(plan.walls.weakest, "span between posts");
  const std::string text = report::walls_text(plan, {});
  EXPECT_THAT(text, AllOf(HasSubstr("span between posts"), HasSubstr("by the stayed-surface rule"),
                          Not(HasSubstr("in water): floor panel"))));
  EXPECT_EQ(ready().walls.weakest, ready().walls.at_set.panels[ready().walls.at_set.weakest].panel.name);
}

TEST(Cooling, IsFromTheWarmestToTheColdest) {
  const std::string shut = with(kReady, "need: [union]", "need: [union, ball valve]");
  const auto vacuum = [&](const std::string& line) {
    return in_psi(plan_of_text(shut + line + "\n").walls.cooling_vacuum.value());
  };
  const AbsolutePressure outside = hydraulics::atmosphere_at(feet(600.0)).value();
  EXPECT_NEAR(vacuum(""),
              in_psi(hydraulics::vacuum_of_cooling(degrees_fahrenheit(60.0), degrees_celsius(3.0), outside)), 1e-9);
  EXPECT_NEAR(vacuum("hottest: 60 degC\ncoldest: 20 degC"),
              in_psi(hydraulics::vacuum_of_cooling(degrees_celsius(60.0), degrees_fahrenheit(60.0), outside)), 1e-9);
  // An open riser lets air in before there is any.
  EXPECT_FALSE(ready().walls.cooling_vacuum);
}

}  // namespace
}  // namespace riserun::plan
