// The order of work of a whole job: what comes before the lid, before the test, in the vise, on the tank, and last.
#include "report/card/make_card.h"
#include "report/words/lid_rows.h"
#include "report/words/say.h"
#include "report/words/step_lists.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <map>

namespace riserun::plan {
namespace {

using testing::Contains;
using testing::IsEmpty;

std::vector<std::string_view> in_phase(const Plan& plan, WorkPhase phase) {
  std::vector<std::string_view> codes;
  for (const WorkStep& step : plan.work.steps)
    if (step.phase == phase) codes.push_back(step.what.code);
  return codes;
}

std::size_t place_of(const Plan& plan, std::string_view code) {
  for (std::size_t i = 0; i < plan.work.steps.size(); ++i)
    if (plan.work.steps[i].what.code == code) return i;
  return plan.work.steps.size();
}

/// Of the first step on the tank that belongs to it.
std::size_t begin_of(const Plan& plan, const std::string& connection) {
  for (std::size_t i = 0; i < plan.work.steps.size(); ++i)
    if (plan.work.steps[i].of == connection && plan.work.steps[i].phase == WorkPhase::on_the_tank) return i;
  return plan.work.steps.size();
}

TEST(Work, HangsTheRiserBeforeTheLidAndTestsBeforeAnythingIsBuiltOn) {
  const Plan plan = plan_of_text(kReady);
  EXPECT_LT(place_of(plan, "work_cut_riser"), place_of(plan, "work_riser_from_inside"));
  EXPECT_LT(place_of(plan, "work_riser_from_inside"), place_of(plan, "work_weld_lid_to"));
  EXPECT_LT(place_of(plan, "work_weld_lid_to"), place_of(plan, "work_leak_test"));
  EXPECT_LT(place_of(plan, "work_leak_test"), begin_of(plan, "relief"));
  EXPECT_TRUE(std::is_sorted(plan.work.steps.begin(), plan.work.steps.end(),
                             [](const WorkStep& a, const WorkStep& b) { return a.phase < b.phase; }));
}

// The limit of the walls rests on the welds of the lid to what holds it.
TEST(Work, TiesTheLidToItsBafflesAndStays) {
  EXPECT_THAT(in_phase(plan_of_text(kReady), WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
  const Plan stays =
      ready_with("supports: {baffles across: 2, baffles along: 1}",
                 "supports: {lid bays: 4 x 2, floor bays: 4 x 2, long side bays: 4 x 1, short side bays: 2 x 1}");
  EXPECT_THAT(in_phase(stays, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
  EXPECT_THAT(in_phase(stays, WorkPhase::before_lid), Contains("work_stays"));
}

// 40 in by 20 in with two plates across and one along has six bays: a post in the middle of each, and no other.
TEST(Work, TiesTheLidToItsPostsBesideTheBaffles) {
  const std::string baffles = "supports: {baffles across: 2, baffles along: 1";
  const Plan posts = ready_with(baffles, baffles + ", lid bays: 6 x 4, floor bays: 6 x 4, lid stays: posts");
  EXPECT_THAT(in_phase(posts, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
  ASSERT_EQ(posts.lid_map.ties.size(), 6u);
  // (40 - 2 x 0.1345) / 3 / 2 = 6.622 in, (20 - 0.1345) / 2 / 2 = 4.966 in.
  EXPECT_NEAR(in_inches(posts.lid_map.ties[0].from_left), 6.622, 1e-3);
  EXPECT_NEAR(in_inches(posts.lid_map.ties[0].from_front), 4.966, 1e-3);
  ASSERT_EQ(posts.walls.bars.size(), 1u);
  EXPECT_EQ(posts.walls.bars[0].count, 6);
  const Plan rows = ready_with(baffles, baffles + ", lid bays: 6 x 2, floor bays: 6 x 2");
  EXPECT_THAT(in_phase(rows, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
  const Plan none = ready_with(baffles, baffles + ", lid bays: 3 x 2, floor bays: 3 x 2");
  EXPECT_THAT(in_phase(none, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
  EXPECT_TRUE(none.walls.bars.empty());
  EXPECT_EQ(place_of(none, "work_stays_of_your_own"), none.work.steps.size());
  const Plan alone = ready_with(baffles, "supports: {lid bays: 6 x 4, lid stays: posts");
  EXPECT_THAT(in_phase(alone, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to"));
}

// (40 - 2 x 0.1345) / 3 = 13.244 in, so posts at 6.622, 20 and 33.378 in; a hole of 0.1345 + 5/16 in to the next mark.
TEST(Work, SaysWhereEachPostStandsAndCutsAHoleOverIt) {
  const std::string baffles = "supports: {baffles across: 2, baffles along: 1";
  const Plan plan = ready_with(baffles, baffles + ", lid bays: 6 x 4, lid stays: posts, long side bays: 6 x 1");
  const auto said = [&](std::string_view code) {
    const std::size_t row = place_of(plan, code);
    return row < plan.work.steps.size() ? report::say(plan.work.steps[row].what, UnitSystem::inch) : "";
  };
  const std::string places = "6-5/8 in, 20 in and 33-3/8 in from the left end";
  EXPECT_THAT(said("work_stay_places"), testing::HasSubstr("posts where these rows cross, middles " + places));
  EXPECT_THAT(said("work_openings_over_stays"),
              testing::AllOf(testing::HasSubstr("6 plug holes of 1/2 in over the posts, middles " + places),
                             testing::HasSubstr("over the upper ends of the upright bars of the long sides")));
  EXPECT_LT(place_of(plan, "work_openings_over_stays"), place_of(plan, "work_weld_lid_to"));
  int noted = 0;
  for (const CutItem& cut : plan.list.cut)
    if (cut.used_for == "stays, lid to floor") {
      ++noted;
      EXPECT_THAT(report::say(*cut.note, UnitSystem::inch), testing::HasSubstr(places));
    }
  EXPECT_EQ(noted, 1);
}

// Nobody welds a bar to the walls and, from below, to a lid that lies on it: it goes in first, and the lid is welded to
// it through slots (common practice).
TEST(Work, SetsTheBarsOfTheLidBeforeIt) {
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {lid bays: 4 x 2, floor bays: 4 x 2, long side bays: 4 x 1}");
  EXPECT_LT(place_of(plan, "work_stays"), place_of(plan, "work_lid_bars"));
  EXPECT_LT(place_of(plan, "work_lid_bars"), place_of(plan, "work_openings_over_stays"));
  EXPECT_LT(place_of(plan, "work_openings_over_stays"), place_of(plan, "work_weld_lid_to"));
  const Plan bare = ready_with("  supports: {baffles across: 2, baffles along: 1}\n", "");
  EXPECT_EQ(place_of(bare, "work_openings_over_stays"), bare.work.steps.size());
}

int openings_over(const Plan& plan, LidOpenings::Over over) {
  int count = 0;
  for (const LidOpenings& each : plan.lid_map.openings) count += each.over == over ? each.count : 0;
  return count;
}

// What is cut is welded, and stands on the list of cuts with its size: none is left open into the tank.
TEST(Openings, AreAllWeldedAndListed) {
  using Over = LidOpenings::Over;
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {lid bays: 4 x 2, lid stays: posts, long side bays: 4 x 1, short side bays: "
                               "2 x 1}");
  EXPECT_EQ(openings_over(plan, Over::posts), 3);
  EXPECT_EQ(openings_over(plan, Over::uprights), 2 * 3 + 2);
  EXPECT_EQ(openings_over(plan, Over::baffles), 0);
  const std::string weld = report::say(plan.work.steps.at(place_of(plan, "work_weld_lid_to")).what, UnitSystem::inch);
  EXPECT_THAT(weld, testing::AllOf(testing::HasSubstr("3 plug holes over the posts"),
                                   testing::HasSubstr("6 slots over the upright bars of the long sides"),
                                   testing::HasSubstr("2 slots over the upright bars of the short sides")));
  EXPECT_EQ(report::holes_to_cut(plan, UnitSystem::inch).size(), 3u);
}

// 40 in by 20 in, 10 ga (0.1345 in) plates with equal bays: two across leave bays of 13.244 in, one along 9.933 in.
TEST(Work, SaysWhereEachBaffleStands) {
  const Plan plan = plan_of_text(kReady);
  const std::size_t row = place_of(plan, "work_baffle_places");
  ASSERT_LT(row, place_of(plan, "work_baffles"));
  const std::string text = report::say(plan.work.steps[row].what, UnitSystem::inch);
  EXPECT_THAT(text, testing::HasSubstr("middles 13-5/16 in and 26-11/16 in from the left end, inside; middles 10 in "
                                       "from the front, inside"));
  for (const CutItem& cut : plan.list.cut) {
    if (!cut.used_for.starts_with("baffles")) continue;
    EXPECT_THAT(report::say(*cut.note, UnitSystem::inch),
                testing::HasSubstr(cut.used_for == "baffles across" ? "13-5/16 in and 26-11/16 in from the left"
                                                                    : "10 in from the front"));
  }
}

TEST(Work, WeldsBungsInBeforeTheLid) {
  const Plan plan = ready_with("gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, welded in: no}");
  EXPECT_THAT(in_phase(plan, WorkPhase::before_lid), Contains("work_bungs"));
  EXPECT_LT(place_of(plan, "work_bungs"), place_of(plan, "work_weld_lid_to"));
}

TEST(Work, OnAClosedReservoirLeavesOutWhatCannotBeDone) {
  const Plan plan = ready_with("  charge: 9 in", "  charge: 9 in\n  lid: welded");
  EXPECT_EQ(place_of(plan, "work_weld_lid_to"), plan.work.steps.size());
  EXPECT_EQ(place_of(plan, "work_riser_from_inside"), plan.work.steps.size());
}

TEST(Work, GuardsTheReservoirFirstAndLetsTheAirInLast) {
  const Plan plan = plan_of_text(with(kReady, "tolerance: 0.1 psi", "tolerance: 0.25 psi"));
  EXPECT_LT(place_of(plan, "work_plug_out_for_valve"), begin_of(plan, "gauge"));
  EXPECT_LT(begin_of(plan, "gauge"), begin_of(plan, "vent"));
  EXPECT_LT(begin_of(plan, "vent"), begin_of(plan, "water up"));
  EXPECT_LT(place_of(plan, "work_table_in_place"), begin_of(plan, "water up"));
  EXPECT_LT(begin_of(plan, "water up"), begin_of(plan, "air in"));
}

// Each step of each run once, with its own number.
TEST(Work, TakesInEveryRunsBuildOrder) {
  for (const char* name : {"bevel-bench", "one-air-bung"}) {
    const Plan plan = plan_of_example(name);
    std::map<std::pair<std::string, int>, Fact> steps;
    for (const WorkStep& step : plan.work.steps) {
      if (step.number == 0) continue;
      EXPECT_TRUE(steps.emplace(std::pair(step.of, step.number), step.what).second) << step.of << step.number;
    }
    std::size_t expected = 0;
    for (const ConnectionPlan& connection : plan.connections)
      for (std::size_t i = 0; i < connection.run()->steps.size(); ++i, ++expected)
        EXPECT_EQ(steps.at({connection.name, static_cast<int>(i + 1)}), connection.run()->steps[i].what);
    EXPECT_EQ(steps.size(), expected);
  }
}

// What a vise holds: cuts, plugs, and joints of which neither side hangs on the tank yet.
TEST(Work, TellsViseFromTank) {
  const Plan plan = plan_of_example("bevel-bench");
  EXPECT_THAT(in_phase(plan, WorkPhase::in_the_vise), Contains("cut_hose"));
  std::vector<int> air_steps_in_the_vise;
  for (const WorkStep& step : plan.work.steps)
    if (step.of == "air in" && step.phase == WorkPhase::in_the_vise) air_steps_in_the_vise.push_back(step.number);
  EXPECT_THAT(air_steps_in_the_vise, testing::ElementsAre(1, 2, 3, 4, 5));  // the regulator with what is before it
  for (const WorkStep& step : plan.work.steps) {
    if (step.of == "gauge") {
      EXPECT_EQ(step.phase, WorkPhase::on_the_tank);
    }
  }
}

TEST(Work, CarriesTheArmsOfAManifold) {
  const Plan plan = plan_of_example("one-air-bung");
  EXPECT_THAT(in_phase(plan, WorkPhase::on_the_tank), Contains("work_carry_arms"));
  EXPECT_THAT(in_phase(plan_of_text(kReady), WorkPhase::on_the_tank), testing::Not(Contains("work_carry_arms")));
}

TEST(Work, OfARefusedPlanEndsBeforeTheFirstFill) {
  EXPECT_THAT(in_phase(plan_of_example("walls-too-thin"), WorkPhase::first_fill), IsEmpty());
  const Plan open = ready_and("coldest: 20 degF");
  EXPECT_EQ(in_phase(open, WorkPhase::first_fill).front(), "work_settle_what_is_open");
  EXPECT_EQ(in_phase(plan_of_text(kReady), WorkPhase::first_fill).front(), "work_charge");
}

TEST(Work, SaysHowTheChargeGetsInAndIsRead) {
  EXPECT_THAT(in_phase(plan_of_text(kReady), WorkPhase::first_fill), Contains("work_charge_at_table"));
  EXPECT_THAT(in_phase(plan_of_text(kReady), WorkPhase::first_fill), Contains("work_dip"));
  const Plan over_rim = plan_of_text(
      with(kReady, "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: over rim, opens at: 1 in}"));
  EXPECT_THAT(in_phase(over_rim, WorkPhase::first_fill), testing::Not(Contains("work_charge_at_table")));
  EXPECT_THAT(in_phase(over_rim, WorkPhase::first_fill), Contains("work_charge_at_port"));
  // Nor down past a check valve in the line.
  const std::string drained = with(kReady, "water temperature:",
                                   "  - {name: drain, from: outlet, ends in: hose bibb, carries: water}\n"
                                   "water temperature:");
  EXPECT_THAT(in_phase(plan_of_text(drained), WorkPhase::first_fill), Contains("work_charge_at_table"));
  const Plan checked =
      plan_of_text(with(drained, "need: [union]", "need: [union, light spring check valve], special order: yes"));
  EXPECT_THAT(in_phase(checked, WorkPhase::first_fill), Contains("work_charge_at_port"));
  EXPECT_THAT(in_phase(checked, WorkPhase::first_fill), testing::Not(Contains("work_charge_at_table")));
}

TEST(Work, StandsTheReliefValveUpright) {
  const Plan plan = plan_of_text(kReady);
  ASSERT_LT(place_of(plan, "work_relief_upright"), plan.work.steps.size());
  EXPECT_EQ(plan.work.steps[place_of(plan, "work_relief_upright")].of, "relief");
}

std::string said_at(const Plan& plan, std::string_view code) {
  const std::size_t place = place_of(plan, code);
  return place < plan.work.steps.size() ? report::say(plan.work.steps[place].what, UnitSystem::inch) : "";
}

/// Its valve may be off by so much that the leak test's gauge of 0 to 5 psi, right to 2 % (ASME B40.100, grade B, from
/// memory), proves it.
const std::string kProvable = with(kReady, "tolerance: 0.1 psi", "tolerance: 0.25 psi");

// Set at 2 psi, give or take 0.25: once between 1.75 and 2.25 by the rig, with the tank tested at more.
TEST(Work, ProvesTheReliefValveByTheRigOfTheLeakTest) {
  const Plan plan = plan_of_text(kProvable);
  ASSERT_GT(in_psi(plan.leak_test.pressure), 2.25);
  const std::size_t place = place_of(plan, "work_prove_relief");
  ASSERT_LT(place_of(plan, "work_leak_test"), place);
  ASSERT_LT(place, plan.work.steps.size());
  EXPECT_EQ(plan.work.steps[place].of, "relief");
  const std::string said = said_at(plan, "work_prove_relief");
  for (const char* part : {"'relief bung' in place of the plug", "the riser's too", "between 1.75 psi and 2.25 psi",
                           "back to its mark of 1.6 psi"})
    EXPECT_THAT(said, testing::HasSubstr(part));
}

// The sheet is what hangs at the tank: it has the proof where the order of work has it, and leaves the valve on.
TEST(LeakTestSheet, HasTheProofOfTheReliefValveBeforeItsRigComesOff) {
  const Plan plan = plan_of_text(kProvable);
  const std::vector<Fact>& steps = plan.leak_test.steps;
  ASSERT_GE(steps.size(), 2u);
  EXPECT_EQ(steps[steps.size() - 2].code, "work_prove_relief");
  EXPECT_EQ(steps.back().code, "test_unplug");
  EXPECT_THAT(report::say(steps.back(), UnitSystem::inch), testing::Not(testing::HasSubstr("relief bung")));
}

// One that stands on a manifold is not proved on the tank: sheet and card say where, else nobody sees it.
TEST(LeakTestSheet, HasTheProofOfAManifoldsReliefValveOnABench) {
  const Plan manifold = plan_of_example("one-air-bung");
  EXPECT_EQ(manifold.leak_test.steps.back().code, "work_bench_test_relief");
  const report::Card card = report::card_of(manifold, UnitSystem::inch);
  EXPECT_TRUE(std::any_of(card.work.begin(), card.work.end(), [](const report::CardRow& row) {
    return row.name == "test" && row.value.find("bench-tested first: opens at") != std::string::npos;
  }));
}

// A test of 3 psi asks for a valve over that and up to 3.75 psi: the job's own of 4 psi is none, and none is sold.
// Without one in the line no air goes in, whatever else is open.
TEST(LeakTestSheet, HasNoStepsWithoutAReliefValveForTheRig) {
  const Plan plan = plan_of_text(with(kStiff, "set 2 psi", "set 4 psi") + "test pressure: 3 psi\n");
  ASSERT_TRUE(plan.leak_test.possible);
  EXPECT_TRUE(has(plan, "test_below_what_may_be_seen"));
  EXPECT_TRUE(has(plan, "no_relief_sold_for_the_test")) << testing::PrintToString(open_in(plan));
  EXPECT_FALSE(plan.leak_test.rig);
  EXPECT_TRUE(plan.leak_test.steps.empty());
  EXPECT_TRUE(report::leak_test_steps(plan, UnitSystem::inch).empty());
}

// ASME BPVC Section VIII begins at 15 psig: the rig's valve opens under that, and none opens over 14.9 psi and under
// it.
TEST(LeakTestSheet, SaysThatATestAsHighAsItsValveMayOpenLeavesItNoRoom) {
  const Plan plan = plan_of_text(with(kReady, "10 ga steel", "1/2 in steel") + "test pressure: 14.9 psi\n");
  const std::string said = said_of(plan, "no_room_for_relief_of_test");
  EXPECT_THAT(said, testing::HasSubstr("14.9 psi is as high as")) << testing::PrintToString(open_in(plan));
  EXPECT_FALSE(has(plan, "no_relief_sold_for_the_test"));
}

// 2.3 psi come in use, and are proved by 2.31 psi as by 3.22, with less force on the lid.
TEST(LeakTestSheet, IsMendedDownwardsWhereThatProvesWhatComesInUse) {
  const Plan plan = plan_of_text(kStiff + "test pressure: 3 psi\n");
  const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& each) {
    return each.reason.code == "no_relief_sold_for_the_test";
  });
  ASSERT_NE(finding, plan.findings.end()) << testing::PrintToString(open_in(plan));
  EXPECT_EQ(report::say(*finding->mend, UnitSystem::inch), "a 'test pressure' of 2.31 psi (64 in water)");
}

// It is screwed in once: for its proof.
TEST(Work, LeavesTheReliefValveOnAfterItsProof) {
  const Plan plan = plan_of_text(kProvable);
  int built = 0;
  for (const WorkStep& step : plan.work.steps) {
    if (step.of != "relief" || step.number == 0) continue;
    ++built;
    EXPECT_EQ(step.phase, WorkPhase::leak_test);
  }
  EXPECT_EQ(built, static_cast<int>(connection_named(plan.connections, "relief")->run()->steps.size()));
  EXPECT_LT(place_of(plan, "work_plug_out_for_valve"), place_of(plan, "work_prove_relief"));
}

// Out of a side the valve stands on an elbow, which goes on with it.
TEST(Work, ProvesAReliefValveOutOfASideOnItsElbow) {
  const std::string text =
      with(kProvable, "relief bung: 3/4 FNPT", "relief bung: {port: 3/4 FNPT, where: side, face height: 12 in}");
  const Plan plan = plan_of_text(with(text, "from: relief bung,", "from: relief bung, need: [90 elbow],"));
  EXPECT_THAT(said_at(plan, "work_prove_relief"),
              testing::HasSubstr("its run, with the elbow turned up and the valve in that, goes onto 'relief bung'"));
  EXPECT_THAT(said_at(plan_of_text(kProvable), "work_prove_relief"), testing::HasSubstr("it goes onto 'relief bung'"));
}

// Right to 0.1 psi it shows 1.9 to 2.1 psi of a valve that opens at 1.8 or at 2.2.
TEST(Work, LeavesAReliefValveToABenchThatTheTestsGaugeCannotProve) {
  EXPECT_EQ(said_at(ready(), "work_prove_relief"), "");
  EXPECT_THAT(said_at(ready(), "work_bench_test_relief_by_finer_gauge"),
              testing::AllOf(testing::HasSubstr("by a gauge that is right to within 0.025 psi"),
                             testing::HasSubstr("between 1.9 psi and 2.1 psi"),
                             testing::HasSubstr("the gauge of the leak test is right to within 0.1 psi")));
}

// What may open above the test's pressure, or hangs where the rig stands, is no matter for the tank.
TEST(Work, LeavesAReliefValveToABenchThatTheTestedTankMayNotProve) {
  const Plan low = plan_of_text(std::string(kReady) + "test pressure: 2.05 psi\n");
  EXPECT_THAT(said_at(low, "work_bench_test_relief_over_test"), testing::HasSubstr("the 2.05 psi of the leak test"));
  EXPECT_EQ(said_at(low, "work_prove_relief"), "");
  const Plan manifold = plan_of_example("one-air-bung");
  EXPECT_THAT(said_at(manifold, "work_bench_test_relief"), testing::HasSubstr("no rig"));
  EXPECT_EQ(said_at(manifold, "work_prove_relief"), "");
  const Plan none = plan_of_example("walls-too-thin");
  EXPECT_EQ(said_at(none, "work_prove_relief"), "");
}

// A purge that the job speaks of is a thing that somebody does before each day's work, and the vent leads outdoors.
TEST(Work, PurgesWhereMetalsAreCutThatMakeHydrogen) {
  const auto cutting = [](const char* metal) {
    return plan_of_text(with(kReady, "vent: {bore: 1/2 in}", "vent: {bore: 1/2 in, stays open: yes, purged: yes}") +
                        "cutting: [" + metal + "]\n");
  };
  const Plan plan = cutting("aluminium");
  EXPECT_LT(place_of(plan, "work_vent_outdoors"), place_of(plan, "work_purge"));
  EXPECT_LT(place_of(plan, "work_purge"), place_of(plan, "work_watch_first_fill"));
  // Five times the air space, at the 3 scfm of the compressor.
  const WorkStep& purge = plan.work.steps[place_of(plan, "work_purge")];
  EXPECT_NEAR(in_seconds(std::get<Time>(purge.what.values.at(0))),
              5.0 * in_cubic_feet(plan.levels.ullage_at_charge) / 3.0 * 60.0, 0.5);
  EXPECT_TRUE(std::any_of(plan.list.consumables.begin(), plan.list.consumables.end(),
                          [](const Consumable& item) { return item.name.find("outdoors") != std::string::npos; }));
  const Plan steel = cutting("steel");
  EXPECT_EQ(place_of(steel, "work_purge"), steel.work.steps.size());
}

/// The ready job with a hose in place of its union, under a table that stands so high.
Plan with_hose(const char* floor_height) {
  return plan_of_text(with(with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]"),
                           "floor height: 30 in", std::string("floor height: ") + floor_height));
}

// A hose of 1 in between barbs of which neither gives way bows back by the barb's length only where it is long, four
// bends of 3 in radius, half of its least (chain/span/bow.h): 12-1/2 in between the barbs do, with bends of 6 in they
// would not.
TEST(Work, SetsTheTableDownOnAHoseThatCannotBeBentOn) {
  const Plan shorter = with_hose("26 in");
  const std::size_t held_up = place_of(shorter, "work_table_held_up");
  const std::size_t onto = place_of(shorter, "work_table_onto_hose");
  ASSERT_LT(onto, shorter.work.steps.size());
  EXPECT_EQ(place_of(shorter, "work_table_in_place"), shorter.work.steps.size());
  EXPECT_EQ(held_up, begin_of(shorter, "water up"));
  EXPECT_LT(held_up, onto);
  // The joint that closes the run is the one after it.
  EXPECT_EQ(shorter.work.steps[onto + 1].of, "water up");
  EXPECT_NE(shorter.work.steps[onto + 1].number, 0);
  const Plan longer = with_hose("30 in");
  EXPECT_LT(place_of(longer, "work_bow_hose"), longer.work.steps.size());
  EXPECT_LT(place_of(longer, "work_table_in_place"), longer.work.steps.size());
}

/// The table with a drain of its own that leads back into the lid by this need.
Plan with_line_back(const char* need, const char* main = "hose") {
  const std::string ports = with(with(with(kReady, "    vent bung: 1/2 FNPT\n",
                                           "    vent bung: 1/2 FNPT\n    back bung: {port: 1 FNPT, where: lid}\n"),
                                      "opens at: 5 in", "opens at: 0 in"),
                                 "need: [union]", std::string("need: [") + main + "]");
  // Under a table so low no hose is bowed onto its second barb.
  const std::string low = with(with(ports, "gap: 14-3/8 in, ", ""), "floor height: 30 in", "floor height: 26 in");
  return plan_of_text(with(low, "water temperature:",
                           std::string("  - {name: back, from: outlet, to: back bung, need: [ball valve, ") + need +
                               "], carries: water, held: {from: fixed, to: fixed}}\nwater temperature:"));
}

// The table comes down once: onto both hoses, whose lower parts stand by then, and no line is closed before it is
// there.
TEST(Work, SetsTheTableDownOntoAllItsHosesInOneMove) {
  const Plan plan = with_line_back("hose");
  const std::size_t onto = place_of(plan, "work_table_onto_hose");
  ASSERT_LT(onto, plan.work.steps.size());
  EXPECT_EQ(place_of(plan, "work_hose_between_fixed_ports"), plan.work.steps.size());
  EXPECT_EQ(place_of(plan, "work_table_in_place"), plan.work.steps.size());
  EXPECT_THAT(said_at(plan, "work_table_onto_hose"),
              testing::AllOf(testing::HasSubstr("in 'water up' the table's barb"),
                             testing::HasSubstr("in 'back' the 1 rubber hose")));
  for (const char* name : {"water up", "back"}) {
    EXPECT_LT(begin_of(plan, name), onto) << name;
    std::size_t before = 0;
    std::size_t after = 0;
    for (std::size_t i = 0; i < plan.work.steps.size(); ++i)
      if (plan.work.steps[i].of == name && plan.work.steps[i].number > 0) ++(i < onto ? before : after);
    EXPECT_GT(before, 0u) << name;
    EXPECT_GT(after, 0u) << name;
    const report::Card card = report::card_of(plan, UnitSystem::inch);
    EXPECT_TRUE(std::any_of(card.work.begin(), card.work.end(), [&](const report::CardRow& row) {
      return row.name == name && row.value.ends_with("; table last");
    })) << name;
  }
}

TEST(Work, ClosesTheWayBackWhenTheTableStands) {
  const Plan rigid = with_line_back("union");
  const std::size_t down = place_of(rigid, "work_table_onto_hose");
  ASSERT_LT(down, rigid.work.steps.size());
  EXPECT_LT(down, begin_of(rigid, "back"));
  const Plan both = with_line_back("union", "union");
  ASSERT_LT(place_of(both, "work_table_in_place"), both.work.steps.size());
  EXPECT_LT(place_of(both, "work_table_in_place"), begin_of(both, "back"));
  EXPECT_LT(place_of(both, "work_table_in_place"), begin_of(both, "water up"));
}

}  // namespace
}  // namespace riserun::plan
