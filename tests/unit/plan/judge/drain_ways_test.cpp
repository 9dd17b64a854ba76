// What a drain holds back, how long it runs, what its valve hangs on.
#include "report/card/make_card.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <cmath>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

/// The ready job with a drain low in a side; `more` stands in the drain's entry.
std::string drained(const std::string& more, const std::string& end = "3/4 brass ball valve") {
  const std::string port = with(kReady, "    vent bung: 1/2 FNPT\n",
                                "    vent bung: 1/2 FNPT\n    drain: {port: 3/4 FNPT, where: side, face height: 1-1/4 "
                                "in}\n");
  return with(port, "water temperature:",
              "  - {name: drain, from: drain, ends in: " + end + ", carries: water" + more + "}\nwater temperature:");
}

/// The same of the table, whose line lets no water back.
std::string table_drained(const std::string& where, const std::string& more = "") {
  const std::string port = with(kReady, "    outlet: {port: 1 FNPT, where: floor, opens at: 5 in}\n",
                                "    outlet: {port: 1 FNPT, " + where + "}\n");
  const std::string shut = with(port, "need: [union]", "need: [union, light spring check valve], special order: yes");
  return with(
      shut, "water temperature:",
      "  - {name: out, from: outlet, ends in: 1 brass ball valve, carries: water" + more + "}\nwater temperature:");
}

std::string running_of(const Plan& plan, const std::string& label) {
  for (const report::CardRow& row : report::card_of(plan, UnitSystem::inch).running)
    if (row.name == label) return row.value;
  return "";
}

const DrainPlan& only_drain(const Plan& plan) { return plan.drains.at(0); }

// The spring check opens at 0.5 psi, 14 in of water; 9 in stand in the tank.
TEST(CheckValve, InADrainLetsNothingOut) {
  const Plan plan = plan_of_text(drained(", need: [3/4 spring check valve]"));
  ASSERT_TRUE(has(plan, "check_valve_shuts_a_drain")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "check_valve_shuts_a_drain"), HasSubstr("no more than 9 in stand there"));
  EXPECT_THAT(said_of(plan, "check_valve_shuts_a_drain"), HasSubstr("leave the 3/4 spring check valve out"));
  EXPECT_FALSE(has(plan_of_text(drained("")), "check_valve_shuts_a_drain"));
}

TEST(CheckValve, WithALightSpringHoldsTheRest) {
  const Plan plan = plan_of_text(drained(", need: [3/4 light spring check valve], special order: yes"));
  EXPECT_TRUE(has(plan, "check_valve_in_a_drain")) << testing::PrintToString(open_in(plan));
  EXPECT_GT(only_drain(plan).held, Length());
}

TEST(CheckValve, OfATablesDrainLetsNothingOutEither) {
  const Plan plan = plan_of_text(table_drained("where: floor", ", need: [1 spring check valve]"));
  EXPECT_TRUE(has(plan, "check_valve_shuts_a_drain")) << testing::PrintToString(open_in(plan));
  const Plan open = plan_of_text(table_drained("where: floor"));
  EXPECT_FALSE(has(open, "check_valve_shuts_a_drain"));
  EXPECT_FALSE(has(open, "own_drain_stands_high"));
}

TEST(OwnDrain, LowDownStandsInForALineThatACheckValveShuts) {
  const std::string higher =
      with(with(table_drained("where: floor"), "set pressure: 1.6 psi", "set pressure: 1.75 psi"), "set 2 psi",
           "set 2.5 psi");
  const Plan plan = plan_of_text(with(higher, "10 ga steel", "3/16 in steel"));
  EXPECT_EQ(plan.verdict, Verdict::ready) << testing::PrintToString(open_in(plan));
}

// Of 4 in 3 stay, and the film that shows.
TEST(OwnDrain, HighInTheSideLeavesTheWater) {
  const Plan plan = plan_of_text(table_drained("where: side, opens at: 3 in"));
  ASSERT_TRUE(has(plan, "own_drain_stands_high")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "own_drain_stands_high"), HasSubstr("'outlet' in the table's floor instead"));
  EXPECT_NEAR(in_inches(only_drain(plan).left_at), 3.125, 1e-9);
  EXPECT_THAT(running_of(plan, "left"), HasSubstr("3-1/8 in deep"));
  EXPECT_THAT(running_of(plan, "down"), HasSubstr("the drain 'out': "));
}

// Torricelli: with nothing but the mouth's and the exit's loss, 1.5 v^2/2g, a tank of A falls from h1 to h2 in
// (A / a) sqrt(2 * 1.5 / g) (sqrt h1 - sqrt h2); nipple, bores and valve take some more.
TEST(Drain, RunsAsLongAsItsHeadAndBoreSay) {
  const Plan plan = plan_of_text(drained(""));
  ASSERT_EQ(plan.drains.size(), 1U);
  const DrainPlan& drain = only_drain(plan);
  ASSERT_TRUE(drain.time);
  const double bore = 0.824 * 0.0254;  // 3/4 in pipe, ASME B36.10M
  const double area = 0.2498 * 3.14159265 * bore * bore;
  const double tank = in_square_metres(transfer::System(plan.transfer.system).reservoir.free_area());
  const double high = in_metres(inches(9.0 - 1.25));
  const double low = in_metres(drain.left_at - inches(1.25));
  const double least = tank / area * std::sqrt(2.0 * 1.5 / 9.80665) * (std::sqrt(high) - std::sqrt(low));
  EXPECT_GT(in_seconds(*drain.time), least);
  EXPECT_LT(in_seconds(*drain.time), 2.5 * least);
  EXPECT_FALSE(has(plan, "drain_takes_too_long"));
}

TEST(Drain, ThatARestrictorThrottlesIsNone) {
  const std::string job = drained(", need: [1/32 in hole restrictor], special order: yes");
  for (const std::string& frost :
       {std::string(), std::string("coldest: 10 degF\nagainst frost: drained every evening\n")}) {
    const Plan plan = plan_of_text(job + frost);
    ASSERT_TRUE(has(plan, "restrictor_in_a_drain")) << testing::PrintToString(open_in(plan));
    EXPECT_GT(in_seconds(*only_drain(plan).time), 24.0 * 3600.0);
  }
}

// Ten feet of thin hose run for hours: over night they do, before a frost they do not.
TEST(Drain, AgainstFrostIsDoneInAnEvening) {
  const std::string thin = with(
      drained(", need: [1/4 brass ball valve, 1/4 hose], in order: yes, hose length: 10 ft", "1/4 brass ball valve"),
      "drain: {port: 3/4", "drain: {port: 1/4");
  const Plan night = plan_of_text(thin);
  ASSERT_TRUE(only_drain(night).time);
  EXPECT_FALSE(has(night, "drain_takes_too_long"));
  const Plan frost = plan_of_text(thin + "coldest: 10 degF\nagainst frost: drained every evening\n");
  EXPECT_TRUE(has(frost, "drain_outlasts_the_evening"))
      << testing::PrintToString(open_in(frost)) << in_seconds(*only_drain(frost).time);
  EXPECT_THAT(running_of(frost, "tank"), HasSubstr("vent and 'drain' open: "));
}

TEST(DrainsValve, StandsOnItsBung) {
  const Plan far = plan_of_text(drained(", need: [hose], hose length: 50 ft"));
  ASSERT_TRUE(has(far, "drain_valve_behind_hose")) << testing::PrintToString(open_in(far));
  EXPECT_THAT(said_of(far, "drain_valve_behind_hose"), HasSubstr("the valve on its bung"));
  const Plan first = plan_of_text(drained(", need: [ball valve, hose], in order: yes, hose length: 50 ft"));
  EXPECT_FALSE(has(first, "drain_valve_behind_hose")) << testing::PrintToString(open_in(first));
}

TEST(DrainsValve, OfPlasticIsRefused) {
  const Plan plastic = plan_of_text(drained("", "3/4 FNPT PVC ball valve"));
  EXPECT_TRUE(has(plastic, "plastic_end_on_the_reservoir", Severity::refused))
      << testing::PrintToString(open_in(plastic));
  EXPECT_FALSE(has(plan_of_text(drained("")), "plastic_end_on_the_reservoir", Severity::refused));
}

/// The table's water led back into the lid by a line of its own; `need` stands in it.
std::string led_back(const std::string& need) {
  const std::string ports = with(with(kReady, "    outlet: {port: 1 FNPT, where: floor, opens at: 5 in}\n",
                                      "    outlet: {port: 1 FNPT, where: floor}\n"),
                                 "    vent bung: 1/2 FNPT\n", "    vent bung: 1/2 FNPT\n    fill port: 1 FNPT\n");
  const std::string shut = with(ports, "need: [union]", "need: [union, light spring check valve], special order: yes");
  return with(
      shut, "water temperature:",
      "  - {name: back, from: outlet, to: fill port, carries: water, need: [" + need + "]}\nwater temperature:");
}

// Shut while air is in, it is a drain and no second way up.
TEST(WayBack, ThroughAValveIsADrain) {
  const Plan plan = plan_of_text(led_back("hose, ball valve"));
  EXPECT_FALSE(has(plan, "second_line_to_the_table")) << testing::PrintToString(open_in(plan));
  EXPECT_FALSE(has(plan, "check_valve_against_drain", Severity::refused));
  ASSERT_EQ(plan.drains.size(), 1u);
  EXPECT_TRUE(only_drain(plan).of_table && only_drain(plan).time);
  EXPECT_TRUE(warns_of(plan, "way_back_is_shut"));
  EXPECT_THAT(running_of(plan, "up"), HasSubstr("shut vent and 'back', open"));
}

// A run that is made for no distance may hang in the air.
TEST(WayBack, IsMadeForItsGap) {
  const Plan plan = plan_of_text(led_back("hose, ball valve"));
  const ConnectionPlan* back = connection_named(plan.connections, "back");
  ASSERT_NE(back, nullptr);
  EXPECT_TRUE(back->gap);
  EXPECT_FALSE(has(plan, "way_back_of_unknown_reach"));
  const Plan aside =
      plan_of_text(with(led_back("hose, ball valve"), "fill port: 1 FNPT", "fill port: {port: 1 FNPT, where: side}"));
  EXPECT_TRUE(has(aside, "way_back_of_unknown_reach", Severity::not_yet)) << testing::PrintToString(open_in(aside));
}

// It lets the air out whatever it is said to carry.
TEST(WayBack, ThatIsSaidToCarryAirIsNone) {
  const Plan plan =
      plan_of_text(with(led_back("hose, ball valve"), "to: fill port, carries: water", "to: fill port, carries: air"));
  EXPECT_TRUE(has(plan, "second_line_to_the_table")) << testing::PrintToString(open_in(plan));
}

TEST(WayBack, WithoutAValveIsMendedByOne) {
  const Plan plan = plan_of_text(led_back("hose"));
  EXPECT_THAT(said_of(plan, "second_line_to_the_table"), HasSubstr("a ball valve in the 'need' of 'back'"));
  EXPECT_FALSE(warns_of(plan, "way_back_is_shut"));
}

}  // namespace
}  // namespace riserun::plan
