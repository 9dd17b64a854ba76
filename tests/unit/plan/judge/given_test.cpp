// Figures and names of the job that no device and no tank has: they are not believed.
#include "report/words/say.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>
#include <string>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

bool cautions_of(const Plan& plan, std::string_view code) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.code == code; });
}

struct Exact {
  const char* name;
  const char* from;
  const char* good;  // just no better than a device is
  const char* bad;
};

class TooExact : public testing::TestWithParam<Exact> {};

TEST_P(TooExact, IsOpenFromThereOn) {
  const Exact& one = GetParam();
  EXPECT_FALSE(has(ready_with(one.from, one.good), "no_device_is_so_exact"));
  EXPECT_TRUE(has(ready_with(one.from, one.bad), "no_device_is_so_exact"));
}

// A quarter of a hundredth of a range of 15 psi; a hundredth of what opens at 2 psi.
INSTANTIATE_TEST_SUITE_P(Given, TooExact,
                         testing::Values(Exact{"Repeatability", "repeatability: 0.05 psi", "repeatability: 0.0376 psi",
                                               "repeatability: 0.0374 psi"},
                                         Exact{"LockUp", "delivery: 3 scfm", "delivery: 3 scfm\n  lock up: 0.0101 psi",
                                               "delivery: 3 scfm\n  lock up: 0 psi"},
                                         Exact{"Tolerance", "tolerance: 0.1 psi", "tolerance: 0.0202 psi",
                                               "tolerance: 0.0198 psi"},
                                         Exact{"Rise", "rise: 0.2 psi", "rise: 0.0202 psi", "rise: 0 psi"}),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(Receiver, OfAShopStandsHigh) {
  const auto at = [](const char* pressure) {
    return ready_with("receiver pressure: 110 psi", std::string("receiver pressure: ") + pressure);
  };
  EXPECT_TRUE(has(at("19.9 psi"), "no_receiver_is_so_low"));
  EXPECT_FALSE(has(at("20.1 psi"), "no_receiver_is_so_low"));
}

TEST(UsedContainer, NamedInTheTitleIsCautioned) {
  EXPECT_TRUE(
      cautions_of(ready_with("Ready bench", "Quench tank from an old propane tank"), "name_speaks_of_what_burns"));
  EXPECT_FALSE(cautions_of(ready(), "name_speaks_of_what_burns"));
}

TEST(Reservoir, WithoutAPortUnderItsLidHasNoDrain) {
  EXPECT_FALSE(cautions_of(ready_with("riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                                      "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}\n"
                                      "    drain: {port: 3/4 FNPT, where: floor}"),
                           "reservoir_has_no_drain"));
  EXPECT_TRUE(cautions_of(ready(), "reservoir_has_no_drain"));
}

TEST(LeakTest, ClosesAParallelThreadWithAPlugThatIsOrdered) {
  const Plan plan = ready_with("vent bung: 1/2 FNPT", "vent bung: G 1/2 female");
  EXPECT_FALSE(has(plan, "plug_of_test_is_not_sold"));
  const auto plug = std::find_if(plan.leak_test.plugs.begin(), plan.leak_test.plugs.end(),
                                 [](const TestPlug& each) { return each.port == "vent bung"; });
  ASSERT_NE(plug, plan.leak_test.plugs.end());
  ASSERT_TRUE(plug->part);
  EXPECT_THAT(plan.catalog->part(*plug->part).name, HasSubstr("G 1/2 BSP parallel plug"));
}

TEST(LeakTest, ThatNoPlugClosesIsNotYet) {
  EXPECT_TRUE(has(ready_with("vent bung: 1/2 FNPT", "vent bung: 1/2 barb"), "plug_of_test_is_not_sold"));
}

TEST(LockUp, ThatBlowsTheReliefValveIsMendedByATighterRegulator) {
  const Plan plan = plan_of_text(
      with(with(kReady, "  set pressure: 1.6 psi\n", ""), "delivery: 3 scfm", "delivery: 3 scfm\n  lock up: 5 psi"));
  EXPECT_THAT(said_of(plan, "relief_valve_weeps"), HasSubstr("a regulator that rises no more than"));
}

// The sheet has no steps then, and says why; one test mends both.
TEST(LeakTest, BelowWhatComesInUseSaysThatItHasNoReliefValveToo) {
  const Plan plan = ready_and("test pressure: 0.05 psi");
  const auto mend_of = [&](std::string_view code) {
    const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                    [&](const Finding& finding) { return finding.reason.code == code; });
    return found == plan.findings.end() ? std::vector<Changes>() : found->ways_to_mend;
  };
  EXPECT_EQ(mend_of("test_below_what_may_be_seen").size(), 1u);
  EXPECT_EQ(mend_of("test_below_what_may_be_seen"), mend_of("no_relief_sold_for_the_test"));
}

TEST(LeakTest, IsOneThatAReliefValveIsSoldFor) {
  // Between 10 and 12.5 psi none is sold.
  const Plan plan = plan_of_text(with(kReady, "sheet: 10 ga steel", "sheet: 1/2 in steel") + "test pressure: 10 psi\n");
  const auto none = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
    return finding.reason.code == "no_relief_sold_for_the_test";
  });
  ASSERT_NE(none, plan.findings.end());
  ASSERT_EQ(none->ways_to_mend.size(), 1u);
  const auto pressure = std::get<GaugePressure>(none->ways_to_mend.front().front().value);
  // The next one that is sold above 10 psi is far above use: the mend goes on to what comes in use.
  EXPECT_LE(pressure, psig(3.0));
  EXPECT_GE(pressure, plan.relief.greatest);
}

// From 15 psi on what lets the air in makes a pressure vessel of the tank (ASME BPVC VIII-1, U-1(c)(2)(h)).
TEST(LeakTest, HasNoReliefValveAtTheCodesPressure) {
  const auto tested_at = [](const char* pressure) {
    return plan_of_text(with(kReady, "sheet: 10 ga steel", "sheet: 1/2 in steel") + "test pressure: " + pressure +
                        "\n");
  };
  for (const char* pressure : {"12.1 psi", "14 psi", "14.9 psi"}) {
    const Plan plan = tested_at(pressure);
    EXPECT_LT(plan.leak_test.relief, psig(15.0)) << pressure;
    EXPECT_FALSE(plan.leak_test.relief_opens) << pressure;
    EXPECT_TRUE(has(plan, "no_relief_sold_for_the_test") || has(plan, "no_room_for_relief_of_test")) << pressure;
  }
}

// A valve that passes what is printed by less than its rounding is not named beside a limit under its own setting.
TEST(LeakTest, ReliefValveIsNoHigherThanIsPrinted) {
  for (const char* pressure : {"2.38 psi", "2.39 psi", "2.395 psi"}) {
    const Plan plan = ready_and(std::string("test pressure: ") + pressure);
    ASSERT_TRUE(plan.leak_test.relief_opens) << pressure;
    EXPECT_LE(*plan.leak_test.relief_opens, plan.leak_test.relief) << pressure;
  }
}

TEST(LidBung, ThatReachesIntoTheWaterIsNamed) {
  // The reservoir is 14 in high and charged 9 in deep.
  const auto reaching = [](const char* inches) {
    return ready_with("relief bung: 3/4 FNPT",
                      std::string("relief bung: {port: 3/4 FNPT, bung: full coupling, bung length: 7 in, projects: ") +
                          inches + " in}");
  };
  EXPECT_FALSE(has(reaching("4.9"), "relief_valve_under_water"));
  EXPECT_TRUE(has(reaching("5.1"), "relief_valve_under_water"));
}

TEST(Hose, ThatLiesInALoopIsNamed) {
  const auto with_hose = [](const char* length) {
    return ready_with("need: [union], held: {from: fixed, to: fixed}",
                      std::string("need: [hose], hose length: ") + length + " in");
  };
  EXPECT_FALSE(has(with_hose("14"), "hose_loops_in_its_gap"));
  EXPECT_TRUE(has(with_hose("24"), "hose_loops_in_its_gap"));
}

TEST(Charge, ThatLeavesNoAirIsLeftToTheProgram) {
  EXPECT_THAT(said_of(ready_with("charge: 9 in", "charge: 13.5 in"), "charge_leaves_no_air"),
              HasSubstr("leave 'charge' out"));
}

TEST(Charge, ThatIsAdvisedIsOnTheRule) {
  const Levels& levels = ready().levels;
  const Length short_of = levels.top_up_mark + levels.days_loss - inches(0.02);
  const Plan plan = ready_with("charge: 9 in", "charge: " + std::to_string(in_inches(short_of)) + " in");
  const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(),
                                    [](const Finding& each) { return each.reason.code == "margin_below_a_days_loss"; });
  ASSERT_NE(finding, plan.findings.end());
  ASSERT_EQ(finding->ways_to_mend.size(), 1u);
  const double sixteenths = 16.0 * in_inches(std::get<Length>(finding->ways_to_mend.front().front().value));
  EXPECT_NEAR(sixteenths, std::round(sixteenths), 1e-6);
}

TEST(Jet, OverTheRimIsCautioned) {
  const std::string hard =
      with(with(with(kReady, "floor height: 30 in", "floor height: 18 in"), "gap: 14-3/8 in, ", ""),
           "set pressure: 1.6 psi", "set pressure: 4 psi");
  const std::string low = with(with(with(hard, "rim: 5 in", "rim: 1/4 in"), "  depth: 4 in", "  depth: 1/8 in"),
                               "opens at: 5 in", "opens at: 1/4 in");
  for (const std::string& job : {hard, low}) {
    const Plan plan = plan_of_text(job);
    ASSERT_TRUE(plan.transfer.jet);
    EXPECT_EQ(plan.transfer.jet->most > plan.transfer.jet->rim, job == low);
    EXPECT_EQ(cautions_of(plan, "jet_goes_over_the_rim"), job == low);
  }
}

std::size_t step_of(const std::vector<Fact>& steps, std::string_view code) {
  const auto step = std::find_if(steps.begin(), steps.end(), [&](const Fact& each) { return each.code == code; });
  return static_cast<std::size_t>(step - steps.begin());
}

TEST(Regulator, IsMarkedWhileTheTankIsClosed) {
  const std::vector<Fact>& steps = ready().leak_test.steps;
  ASSERT_LT(step_of(steps, "test_mark_regulator"), steps.size());
  EXPECT_LT(step_of(steps, "test_first_rung"), step_of(steps, "test_mark_regulator"));
  EXPECT_LT(step_of(steps, "test_mark_regulator"), step_of(steps, "test_last_rung"));
  EXPECT_EQ(std::get<GaugePressure>(steps[step_of(steps, "test_mark_regulator")].values.front()),
            ready().transfer.setting);
}

TEST(LeakTest, AsHardAsAReliefValveAsksIsLetInAsItIsPrinted) {
  // A code valve at 2 psi is open at 7 psi only: past a quarter of the yield, and the test goes there.
  const std::string code_valve = with(with(kReady, "relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}\n", ""),
                                      "sheet: 10 ga steel", "sheet: 3/16 in steel");
  for (const char* test : {"7.04 psi", "7.1 psi"})
    EXPECT_EQ(has(plan_of_text(code_valve + "test pressure: " + test + "\n"), "test_passes_four_to_one"),
              std::string(test) == "7.1 psi")
        << test;
}

// Filled to the lid it is the charge that is wrong, not the bungs.
TEST(Charge, ToTheLidIsMendedByItself) {
  const Plan plan = ready_with("charge: 9 in", "charge: 14 in");
  EXPECT_TRUE(has(plan, "charge_leaves_no_air"));
  for (const char* code : {"gauge_under_water", "vent_under_water", "air_comes_in_under_water"})
    EXPECT_FALSE(has(plan, code)) << code;
  EXPECT_TRUE(std::all_of(plan.findings.begin(), plan.findings.end(),
                          [](const Finding& finding) { return finding.mend.has_value(); }));
}

const Fact* caution_of(const Plan& plan, std::string_view code) {
  for (const Caution& caution : plan.cautions)
    if (caution.fact.code == code) return &caution.fact;
  return nullptr;
}

// Too deep it can run over, too low it uncovers the riser: where no depth does both, that is said with the rim that
// makes one.
TEST(Charge, ThatNoDepthMakesRightComesWithTheRimThatDoes) {
  EXPECT_NE(caution_of(ready_with("rim: 5 in", "rim: 6 in"), "charge_can_overflow"), nullptr);
  const Plan plan = plan_of_text(with(with(kReady, "rim: 5 in", "rim: 4-1/4 in"), "opens at: 5 in", "opens at: 4 in"));
  ASSERT_NE(caution_of(plan, "no_charge_does_both"), nullptr);
  EXPECT_EQ(caution_of(plan, "charge_can_overflow"), nullptr);
  const auto inches_of = [](Length length) { return std::to_string(in_inches(length)) + " in"; };
  const Plan mended = plan_of_text(with(with(kReady, "rim: 5 in", "rim: " + inches_of(plan.levels.rim_for_least)),
                                        "charge: 9 in", "charge: " + inches_of(plan.levels.least_charge)));
  EXPECT_FALSE(mended.levels.can_overflow);
  EXPECT_FALSE(has(mended, "margin_below_a_days_loss"));
}

// The mend of a charge that is too low says the rim that it takes.
TEST(Charge, ThatIsDeepenedPastTheRimIsSaidWithIt) {
  const Plan plan =
      plan_of_text(with(with(with(kReady, "rim: 5 in", "rim: 4-1/4 in"), "charge: 9 in", "charge: 6-1/2 in"),
                        "opens at: 5 in", "opens at: 4 in"));
  ASSERT_TRUE(has(plan, "margin_below_a_days_loss")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "margin_below_a_days_loss"), testing::HasSubstr("so a rim"));
}

// A box of 6.7 in has no room over the charge that leaves a day's losses: a higher one has.
TEST(Charge, ThatLeavesNoAirTakesAHigherReservoir) {
  const std::string hose = with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]");
  const Plan plan = plan_of_text(with(with(hose, "height: 14 in", "height: 6.7 in"), "charge: 9 in", "charge: 6.3 in"));
  ASSERT_TRUE(has(plan, "margin_below_a_days_loss")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "margin_below_a_days_loss"),
              testing::HasSubstr("a reservoir 7-1/4 in high inside, charged"));
}

// A gauge that was marked 1 psi by hand, on a tank that comes to 2.3 psi.
TEST(EndDevice, StandsWhatTheReservoirComesTo) {
  const auto marked = [](const char* rating) {
    return plan_of_text(std::string(kReady) + "measured:\n  - {part: 5 psi gauge 1/4, rating: " + rating + "}\n");
  };
  const Plan ready = plan_of_text(kReady);
  ASSERT_TRUE(ready.relief.given);
  const double greatest = in_psi(ready.relief.greatest);
  EXPECT_FALSE(has(marked(fmt::format("{} psi", greatest + 0.01).c_str()), "device_not_rated"));
  const Plan under = marked(fmt::format("{} psi", greatest - 0.01).c_str());
  EXPECT_TRUE(has(under, "device_not_rated"));
  EXPECT_EQ(under.verdict, Verdict::not_yet);
}

}  // namespace
}  // namespace riserun::plan
