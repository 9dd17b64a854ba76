// The order of work of a whole job: what comes before the lid, before the test, in the vise, on the tank, and last.
#include "report/words/say.h"
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
  EXPECT_LT(place_of(plan, "work_riser_from_inside"), place_of(plan, "work_weld_lid_to_baffles"));
  EXPECT_LT(place_of(plan, "work_weld_lid_to_baffles"), place_of(plan, "work_leak_test"));
  EXPECT_LT(place_of(plan, "work_leak_test"), begin_of(plan, "relief"));
  EXPECT_TRUE(std::is_sorted(plan.work.steps.begin(), plan.work.steps.end(),
                             [](const WorkStep& a, const WorkStep& b) { return a.phase < b.phase; }));
}

// The limit of the walls rests on the welds of the lid to what holds it.
TEST(Work, TiesTheLidToItsBafflesAndStays) {
  EXPECT_THAT(in_phase(plan_of_text(kReady), WorkPhase::lid), testing::ElementsAre("work_weld_lid_to_baffles"));
  const Plan stays =
      ready_with("supports: {baffles across: 2, baffles along: 1}",
                 "supports: {lid bays: 4 x 2, floor bays: 4 x 2, long side bays: 4 x 1, short side bays: 2 x 1}");
  EXPECT_THAT(in_phase(stays, WorkPhase::lid), testing::ElementsAre("work_weld_lid_to_stays"));
  EXPECT_THAT(in_phase(stays, WorkPhase::before_lid), Contains("work_stays"));
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
  EXPECT_LT(place_of(plan, "work_bungs"), place_of(plan, "work_weld_lid_to_baffles"));
}

TEST(Work, OnAClosedReservoirLeavesOutWhatCannotBeDone) {
  const Plan plan = ready_with("  charge: 9 in", "  charge: 9 in\n  lid: welded");
  EXPECT_EQ(place_of(plan, "work_weld_lid_to_baffles"), plan.work.steps.size());
  EXPECT_EQ(place_of(plan, "work_riser_from_inside"), plan.work.steps.size());
}

TEST(Work, GuardsTheReservoirFirstAndLetsTheAirInLast) {
  const Plan plan = plan_of_text(kReady);
  EXPECT_LT(begin_of(plan, "relief"), begin_of(plan, "gauge"));
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
}

}  // namespace
}  // namespace riserun::plan
