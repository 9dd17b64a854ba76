// The regulator's knob is set by the reservoir's gauge: what both may be off, against the room that the setting has.
#include "plan/advice/change.h"
#include "plan/judge/limits.h"
#include "reservoir/pressure_decay.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::Not;

const Finding* finding_coded(const Plan& plan, std::string_view code) {
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code) return &finding;
  return nullptr;
}

std::string psi_words(PressureDifference pressure) { return fmt::format("{:.6f} psi", in_psi(pressure)); }

Plan set_just_to(PressureDifference pressure) {
  return ready_with("set pressure: 1.6 psi", "set pressure: " + psi_words(pressure));
}

// ASME B40.100 grade B: 2 % of the span in the dial's middle half, 0.1 psi of 5 psi; and the regulator comes back to
// within 0.05 psi. Both may be low at once (worst case, the plain sum).
TEST(Gauge, AndRegulatorAreTogetherRightWithinWhatTheSettingHasToSpare) {
  const PressureDifference finish = ready().transfer.fill.pressure_to_finish - psig(0.0);
  ASSERT_GT(finish, psi(1.25));  // a quarter of the dial
  EXPECT_FALSE(has(set_just_to(finish + psi(0.152)), "gauge_too_coarse_for_setting"));
  const Plan near = set_just_to(finish + psi(0.148));
  EXPECT_TRUE(has(near, "gauge_too_coarse_for_setting")) << testing::PrintToString(open_in(near));
  // Turning the knob costs nothing, and comes before another regulator.
  const std::string said = said_of(near, "gauge_too_coarse_for_setting");
  EXPECT_LT(said.find("set the regulator to"), said.find("a precision regulator")) << said;
}

// What the regulator is to come back to is the same for each finding that asks for it: the job is ready with it.
TEST(Knob, IsMendedByOneFigureForTheRegulator) {
  const Plan coarse =
      plan_of_text(with(example_text("one-air-bung"), "repeatability: 0.05 psi", "repeatability: 0.1 psi"));
  int asked = 0;
  for (const Finding& finding : coarse.findings)
    for (const Changes& way : finding.ways_to_mend) {
      if (way.front().key != "air.regulator repeatability") continue;
      ++asked;
      const auto after = findings_of(coarse.catalog, changed(*coarse.catalog, coarse.job, way));
      EXPECT_TRUE(std::none_of(after.begin(), after.end(), [](const Finding& left) {
        return left.reason.code == "regulator_repeats_too_coarsely" ||
               left.reason.code == "gauge_too_coarse_for_setting";
      })) << report::sentences_of(finding, UnitSystem::inch);
    }
  EXPECT_GE(asked, 1) << testing::PrintToString(open_in(coarse));
}

/// The lowest at which the ready job's relief valve may open, less what the regulator locks up over its setting behind
/// the check valve's spring: the highest setting that leaves it shut, if the knob stood exactly there.
PressureDifference shut_of_ready() {
  const transfer::AirSupply& air = ready().transfer.system.air;
  return psi(2.0 - 0.1) - air.lock_up + air.after_regulator.opens_at();
}

// A setting that is printed in three digits may be typed half a per cent lower.
TEST(Knob, IsMendedByARegulatorThatDoesWithTheSettingAsItIsPrinted) {
  const GaugePressure finish = ready().transfer.fill.pressure_to_finish;
  const auto with_knob = [](GaugePressure setting, PressureDifference repeats) {
    return plan_of_text(
        with(with(kReady, "regulator repeatability: 0.05 psi", "regulator repeatability: " + psi_words(repeats)),
             "set pressure: 1.6 psi", "set pressure: " + psi_words(setting - psig(0.0))));
  };
  const GaugePressure setting = finish + psi(0.25);
  const Plan coarse = with_knob(setting, psi(0.3));
  const Finding* finding = finding_coded(coarse, "regulator_repeats_too_coarsely");
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(coarse));
  std::optional<PressureDifference> asked;
  const auto look = [&](const quantity::Fact& fact) {
    if (fact.code == "regulator_that_repeats_within") asked = std::get<PressureDifference>(fact.values[0]);
  };
  if (finding->mend) look(*finding->mend);
  for (const Mend& mend : finding->or_else) look(mend.fact);
  ASSERT_TRUE(asked);
  const Plan typed = with_knob(gauge_pascals(in_pascals(setting) * kAsPrinted), *asked);
  EXPECT_EQ(finding_coded(typed, "regulator_repeats_too_coarsely"), nullptr);
  EXPECT_EQ(finding_coded(typed, "gauge_too_coarse_for_setting"), nullptr) << testing::PrintToString(open_in(typed));
}

// On the high side the same errors, 0.1 psi of the gauge and 0.05 psi of the regulator, open the relief valve.
TEST(Gauge, AndRegulatorOffToTheHighSideLeaveTheReliefValveShut) {
  EXPECT_TRUE(has(set_just_to(shut_of_ready() - psi(0.148)), "relief_valve_weeps"));
  const Plan under = set_just_to(shut_of_ready() - psi(0.152));
  EXPECT_FALSE(has(under, "relief_valve_weeps")) << testing::PrintToString(open_in(under));
  EXPECT_DOUBLE_EQ(in_psi(under.transfer.knob_off), 0.15);
}

// A setting that is worked out leaves room for both.
TEST(Gauge, AndRegulatorHaveRoomUnderASettingThatIsWorkedOut) {
  const Plan plan = plan_of_text(with(kStiff, "  set pressure: 1.6 psi\n", ""));
  EXPECT_LE(in_psi(plan.transfer.setting - psig(0.0)), in_psi(shut_of_ready()) - 0.15);
  EXPECT_THAT(open_in(plan), testing::IsEmpty());
}

// A gauge that shows the test's 2.8 psi is off by 0.1 psi where the job's own of 0 to 3 psi is off by 0.06.
TEST(GaugeOfTest, OffToTheHighSideOpensTheReliefValveToo) {
  const auto marked = [&](double under) {
    return plan_of_text(with(with(kReady, "5 psi gauge", "0 to 3 psi gauge"), "set pressure: 1.6 psi",
                             "set pressure: " + psi_words(shut_of_ready() - psi(under))) +
                        "test pressure: 2.8 psi\n");
  };
  EXPECT_FALSE(has(marked(0.152), "mark_by_test_gauge_opens_relief"));
  const Plan near = marked(0.148);
  EXPECT_FALSE(has(near, "relief_valve_weeps"));
  EXPECT_THAT(said_of(near, "mark_by_test_gauge_opens_relief"), HasSubstr("may open at 1.9 psi"));
}

/// With a gauge of 0 to 3 psi, that shows no test above 2 psi, and one for the rig beside it.
std::string fine_dial(const std::string& set, const std::string& test) {
  return with(with(kReady, "5 psi gauge", "0 to 3 psi gauge"), "set pressure: 1.6 psi", "set pressure: " + set) +
         "test pressure: " + test + "\n";
}

// The knob's mark is made in the leak test: of gauges that show its pressure (1.5 to 4 times: ASME BPVC Section VIII
// UG-102, as reported) the one that is least off at the setting (ASME B40.100) is bought, not the one nearest twice.
TEST(GaugeOfTest, IsTheFinestThatShowsTheTest) {
  const Plan plan = plan_of_text(fine_dial("1.6 psi", "2.8 psi"));
  ASSERT_TRUE(plan.leak_test.by_own_regulator());
  EXPECT_FALSE(plan.leak_test.gauge_of_job);
  EXPECT_NEAR(in_psi(plan.leak_test.gauge_full_scale), 5.0, 1e-9);
}

// Its error counts as the job's own does: 0.1 psi of 0 to 5, where the job's dial of 0 to 3 is right to within 0.06.
TEST(GaugeOfTest, MarksTheKnobWithinWhatTheSettingHasToSpare) {
  const PressureDifference finish = ready().transfer.fill.pressure_to_finish - psig(0.0);
  const auto marked = [&](double room) { return plan_of_text(fine_dial(psi_words(finish + psi(room)), "2.8 psi")); };
  EXPECT_FALSE(has(marked(0.152), "gauge_of_test_too_coarse_for_setting"));
  const Plan near = marked(0.148);
  EXPECT_FALSE(has(near, "gauge_too_coarse_for_setting"));
  const Finding* finding = finding_coded(near, "gauge_of_test_too_coarse_for_setting");
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(near));
  EXPECT_TRUE(finding->mend) << "and nothing is said to be done about it";
}

// At 2.5 psi a dial of 0 to 10 is right to within 0.2 psi, one of 0 to 5 to within 0.1.
TEST(Gauge, IsMendedByAFinerOne) {
  std::string high = with(with(kReady, "10 ga steel", "3/16 in steel"), "set 2 psi", "set 3 psi");
  high = with(with(high, "ends in: 5 psi", "ends in: 10 psi"), "set pressure: 1.6 psi", "set pressure: 2.5 psi");
  high = with(with(high, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]");
  const Plan near = plan_of_text(with(high, "floor height: 30 in", "floor height: 58 in"));
  const Finding* finding = finding_coded(near, "gauge_too_coarse_for_setting");
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(near));
  ASSERT_EQ(finding->ways_to_try.size(), 1u);
  EXPECT_EQ(finding->ways_to_try.front().front().key, kDeviceOf);
  const auto after = findings_of(near.catalog, changed(*near.catalog, near.job, finding->ways_to_try.front()));
  EXPECT_TRUE(std::none_of(after.begin(), after.end(),
                           [](const Finding& left) { return left.reason.code == "gauge_too_coarse_for_setting"; }));
}

// A finer one that shows no leak test leaves the knob to be marked by a coarser one of the rig: it is no mend.
TEST(Gauge, IsNotMendedByOneThatTheLeakTestTurnsRoundOnItsEnd) {
  const PressureDifference finish = ready().transfer.fill.pressure_to_finish - psig(0.0);
  const Plan near = plan_of_text(with(with(kReady, "1.6 psi", psi_words(finish + psi(0.13))), "repeatability: 0.05 psi",
                                      "repeatability: 0.0375 psi"));
  EXPECT_THAT(said_of(near, "gauge_too_coarse_for_setting"), Not(HasSubstr("0 to 3 psi gauge")));
}

// No regulator repeats to a thousandth of its range (common practice); what has so little room is to get more of it.
TEST(Repeatability, IsNotAskedForFinerThanDevicesHave) {
  const PressureDifference finish = ready().transfer.fill.pressure_to_finish - psig(0.0);
  const auto said = [&](double room) {
    return said_of(set_just_to(finish + psi(room)), "regulator_repeats_too_coarsely");
  };
  EXPECT_THAT(said(0.08), HasSubstr("a precision regulator"));
  EXPECT_THAT(said(0.07), HasSubstr("set the regulator"));
  EXPECT_THAT(said(0.07), Not(HasSubstr("a precision regulator")));
}

// A setting that goes down for a relief valve gets its room back with the next higher valve, and walls for it.
TEST(Setting, GetsRoomByAHigherReliefValve) {
  std::string low =
      with(with(kReady, "  set pressure: 1.6 psi\n", ""), "relief valve set 2 psi", "relief valve set 1.5 psi");
  low = with(with(low, "tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 0.05 psi, rise: 0.15 psi"), "5 psi gauge",
             "0 to 3 psi gauge");
  low = with(with(low, "regulator range: 15 psi", "regulator range: 10 psi"), "0 to 15 psi", "0 to 10 psi");
  low = with(with(low, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]");
  const Plan plan = plan_of_text(
      with(with(low, "floor height: 30 in", "floor height: 29.9 in"), "light spring check valve", "union"));
  ASSERT_TRUE(has(plan, "gauge_too_coarse_for_setting")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "gauge_too_coarse_for_setting"), HasSubstr("a relief valve set at 2 psi"));
}

}  // namespace
}  // namespace riserun::plan
