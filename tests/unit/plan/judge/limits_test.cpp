// Every limit that decides a verdict, just under it and just over it. The limits stand here as numbers, so that one
// that is changed by a few per cent fails.
#include "hydraulics/fluid.h"
#include "report/text/plan_text.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

std::string psi_text(GaugePressure pressure) { return fmt::format("{:.6f} psi", in_psi(pressure)); }
std::string psi_text(PressureDifference pressure) { return fmt::format("{:.6f} psi", in_psi(pressure)); }

void expect_from(std::string_view code, const Plan& under, const Plan& over, Severity severity = Severity::not_yet) {
  EXPECT_FALSE(has(under, code, severity)) << code;
  EXPECT_TRUE(has(over, code, severity)) << code << ": " << testing::PrintToString(open_in(over));
}

Plan set_to(double psi) { return ready_with("set pressure: 1.6 psi", fmt::format("set pressure: {:.4f} psi", psi)); }

TEST(Limits, RegulatorRangeOverSetting) {
  // A tenth of 15 psi, less half a per cent for what was printed with three digits.
  expect_from("regulator_range_too_wide", set_to(1.4935), set_to(1.4915));
}

TEST(Limits, RepeatabilityAgainstTheRoomAroundTheSetting) {
  const GaugePressure set = ready().transfer.setting;
  const PressureDifference room =
      std::min(set - ready().transfer.fill.pressure_to_finish, ready().relief.valves.front().opens - set);
  const auto repeating = [&](double share) {
    return ready_with("repeatability: 0.05 psi", "repeatability: " + psi_text(room * share));
  };
  expect_from("regulator_repeats_too_coarsely", repeating(0.495), repeating(0.505));
}

TEST(Limits, GaugeScaleOverSetting) {
  // A dial to 5 psi shows what is 1.5 to 4 times below, and half a per cent more for what was printed with three
  // digits.
  expect_from("gauge_cannot_show", set_to(1.2445), set_to(1.2430));
  expect_from("gauge_cannot_show", set_to(3.3490), set_to(3.3510));
}

TEST(Limits, ReliefValveAtFullFlowAgainstTheWalls) {
  const PressureDifference rise = ready().walls.limit - psig(2.1);
  const auto rising = [&](double share) { return ready_with("rise: 0.2 psi", "rise: " + psi_text(rise * share)); };
  expect_from("relief_valve_opens_above_limit", rising(0.999), rising(1.001));
}

// A code valve may be off by 2 psi and rises by 3 psi to full flow.
TEST(Limits, ReliefValveOfTheCodeIsOpenFivePsiOverItsSetting) {
  const Plan plan = ready_with("relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}\n", "");
  ASSERT_EQ(plan.relief.valves.size(), 1u);
  EXPECT_NEAR(in_psi(plan.relief.valves.front().full_flow), 7.0, 1e-9);
}

TEST(Limits, SettingAgainstTheWalls) {
  const double limit = in_psi(ready().walls.limit);
  expect_from("setting_is_more_than_walls_may_see", set_to(limit - 0.002), set_to(limit + 0.002), Severity::refused);
}

// The walls' limit is to be 1.2 times the test pressure.
TEST(Limits, LeakTestAgainstTheWalls) {
  const GaugePressure most = gauge_pascals(in_pascals(ready().walls.limit) / 1.2);
  expect_from("walls_do_not_stand_the_test", ready_and("test pressure: " + psi_text(most - psi(0.002))),
              ready_and("test pressure: " + psi_text(most + psi(0.002))), Severity::refused);
}

// No more than half again what comes in use (tests with air are made at 1.1 to 1.33 times), half a per cent for what
// was printed with three digits.
TEST(Limits, LeakTestAgainstWhatComesInUse) {
  const auto tested = [](GaugePressure at) { return plan_of_text(kStiff + "test pressure: " + psi_text(at) + "\n"); };
  const GaugePressure worst = plan_of_text(kStiff).relief.greatest;
  ASSERT_GT(worst, psig(2.0));
  const GaugePressure most = gauge_pascals(in_pascals(worst) * 1.5 / 0.995);
  expect_from("test_far_above_use", tested(most - psi(0.002)), tested(most + psi(0.002)));
  EXPECT_THAT(said_of(tested(psig(4.5)), "test_far_above_use"), testing::HasSubstr("Mend: a 'test pressure' of"));
}

// A test with air needs 1 psi, and so walls that stand 1.2 psi; their limit is straight in the yield.
TEST(Limits, LeakTestAtAll) {
  const auto with_yield = [](double ksi) {
    return plan_of_text(with(kReady, "  charge: 9 in", fmt::format("  yield: {:.5f} ksi\n  charge: 9 in", ksi)));
  };
  const double low = in_psi(with_yield(10.0).walls.limit);
  const double high = in_psi(with_yield(20.0).walls.limit);
  const double yield = 10.0 + (1.2 - low) / (high - low) * 10.0;
  EXPECT_NEAR(in_psi(with_yield(yield).walls.limit), 1.2, 0.002);
  expect_from("no_leak_test_possible", with_yield(yield * 1.01), with_yield(yield * 0.99));
}

// Half a gram-molecule more hydrogen than aluminium, as much as magnesium; 24.055 L a gram-molecule at 20 degC; 4 % of
// the air space.
TEST(Limits, FinesThatBringTheAirSpaceToFourPerCentOfHydrogen) {
  const auto grams = [](const char* metal) {
    for (const Finding& finding : ready_and(std::string("cutting: [") + metal + "]").findings)
      if (finding.reason.code == "fines_make_hydrogen")
        return in_kilograms(std::get<Mass>(finding.reason.values[1])) * 1000.0;
    return 0.0;
  };
  const double hydrogen = in_litres(ready().levels.ullage_at_charge) * 0.04 / 0.96;
  EXPECT_NEAR(grams("aluminium") / (hydrogen / (1.5 * 24.055 / 26.982)), 1.0, 0.005);
  EXPECT_NEAR(grams("magnesium") / (hydrogen / (24.055 / 24.305)), 1.0, 0.005);
}

// The head of the plan says when the greatest pressure that can occur leaves a factor below 4.
TEST(Limits, FactorOfFourAtTheGreatestThatCanOccur) {
  const double four = in_psi(ready().walls.four_to_one);
  const auto open_at = [&](double psi) {
    const std::string low =
        with(with(kReady, "set 2 psi", "set 1.5 psi"), "set pressure: 1.6 psi", "set pressure: 1.4 psi");
    return plan_of_text(with(low, "rise: 0.2 psi", fmt::format("rise: {:.5f} psi", psi - 1.6)));
  };
  const auto is_said = [](const Plan& plan) {
    return report::plan_text(plan, {}).find("UNDER 4") != std::string::npos;
  };
  const Plan under = open_at(four - 0.002);
  const Plan over = open_at(four + 0.002);
  EXPECT_NEAR(in_psi(under.relief.greatest), four - 0.002, 1e-4);
  EXPECT_NEAR(under.relief.factor_at_greatest, 4.0, 0.01);
  EXPECT_FALSE(is_said(under));
  EXPECT_TRUE(is_said(over));
}

TEST(Limits, ReliefValveAgainstTheSetting) { expect_from("relief_valve_blows_in_use", set_to(1.999), set_to(2.001)); }

TEST(Limits, ReliefCapacityAgainstTheSupply) {
  const std::string bare = with(kReady, "1/16 in hole restrictor, ", "");
  const Plan without = plan_of_text(bare);
  ASSERT_FALSE(without.relief.valves.empty());
  const Length hole = without.relief.valves.front().restrictor;
  const auto fed_by = [&](double share) {
    return plan_of_text(
        with(bare, "  set pressure", fmt::format("  restrictor: {:.6f} in\n  set pressure", in_inches(hole) * share)));
  };
  expect_from("relief_valve_too_narrow", fed_by(0.999), fed_by(1.001));
  EXPECT_EQ(fed_by(0.999).relief.greatest, fed_by(0.999).relief.valves.front().full_flow);
  EXPECT_GT(fed_by(1.05).relief.greatest, fed_by(1.05).relief.valves.front().full_flow);
}

TEST(Limits, LeakTestAgainstWhatTheReliefValveAllows) {
  const GaugePressure allowed = ready().relief.greatest;
  expect_from("test_below_what_may_be_seen", ready_and("test pressure: " + psi_text(allowed + psi(0.001))),
              ready_and("test pressure: " + psi_text(allowed - psi(0.001))));
}

TEST(Limits, MarginOverTheRiserAgainstADaysLoss) {
  const Levels& levels = ready().levels;
  // 5 mm evaporate and 2 mm splash off the table a day.
  EXPECT_NEAR(in_millimetres(levels.days_loss) * 40.0 * 20.0, 7.0 * 44.0 * 22.0, 0.01);
  const Length least = levels.top_up_mark + levels.days_loss;
  const auto charged = [&](Length more) {
    return ready_with("charge: 9 in", fmt::format("charge: {:.5f} in", in_inches(least + more)));
  };
  expect_from("margin_below_a_days_loss", charged(inches(0.002)), charged(inches(-0.002)));
}

TEST(Limits, CodePressure) {
  const std::string wide = with(kReady, "regulator range: 15 psi", "regulator range: 30 psi");
  const auto set_wide_to = [&](const char* psi) {
    return plan_of_text(with(wide, "set pressure: 1.6 psi", fmt::format("set pressure: {} psi", psi)));
  };
  expect_from("code_pressure", set_wide_to("14.99"), set_wide_to("15"), Severity::refused);
}

TEST(Limits, ScaldingAndFreezing) {
  expect_from("water_scalds", ready_and("hottest: 59.9 degC"), ready_and("hottest: 60 degC"));
  expect_from("water_can_freeze", ready_and("coldest: 3 degC"), ready_and("coldest: 2.9 degC"));
}

// With a valve in the water's way all can be shut; the vacuum of its cooling is set beside what the walls stand.
TEST(Limits, VacuumOfCoolingAgainstTheWalls) {
  const std::string shut = with(kReady, "need: [union]", "need: [union, ball valve]");
  const GaugePressure stands = plan_of_text(shut).walls.vacuum_limit;
  const auto outside = hydraulics::atmosphere_at(feet(600.0)).value();
  const Temperature cold = degrees_celsius(5.0);
  double warm = 10.0;
  while (GaugePressure() + hydraulics::vacuum_of_cooling(degrees_celsius(warm), cold, outside) < stands) warm += 0.01;
  ASSERT_LT(warm, 98.0);
  const auto warmed = [&](const std::string& job, double to) {
    return plan_of_text(job + fmt::format("hottest: {:.2f} degC\nagainst heat: guarded\ncoldest: 5 degC\n", to));
  };
  expect_from("cooling_pulls_walls_in", warmed(shut, warm - 0.02), warmed(shut, warm + 0.02));
  // An open riser or an open vent lets air in.
  EXPECT_FALSE(has(warmed(kReady, warm + 0.02), "cooling_pulls_walls_in"));
  EXPECT_FALSE(has(warmed(with(shut, "vent: {bore: 1/2 in}", "vent: {bore: 1/2 in, stays open: yes}"), warm + 0.02),
                   "cooling_pulls_walls_in"));
}

// The program's own setting stays under what keeps the factor at four as long as that finishes the fill, and not
// longer; the yield decides.
TEST(Limits, FourToOneOfASettingOfTheProgramsOwn) {
  const std::string own = with(kReady, "  set pressure: 1.6 psi\n", "");
  const auto with_yield = [&](double ksi) {
    return plan_of_text(with(own, "  charge: 9 in", fmt::format("  yield: {:.4f} ksi\n  charge: 9 in", ksi)));
  };
  double low = 20.0;
  double high = 36.0;
  expect_from("setting_passes_four_to_one", with_yield(high), with_yield(low));
  for (int halved = 0; halved < 10; ++halved) {
    const double middle = 0.5 * (low + high);
    (has(with_yield(middle), "setting_passes_four_to_one") ? low : high) = middle;
  }
  const Plan kept = with_yield(high);
  EXPECT_LE(kept.transfer.setting, kept.walls.four_to_one);
  EXPECT_GE(kept.transfer.setting, kept.transfer.fill.pressure_to_finish);
  // A setting is a round figure: it is held back by less than that.
  EXPECT_NEAR(in_psi(kept.walls.four_to_one), in_psi(kept.transfer.fill.pressure_to_finish), 0.03);
}

TEST(Limits, AirSpaceOverTheCharge) {
  const auto charged = [](double share) {
    return ready_with("charge: 9 in", fmt::format("charge: {:.4f} in", 14.0 * share));
  };
  expect_from("charge_leaves_no_air", charged(0.9499), charged(0.9501));
}

TEST(Limits, YieldOfASheetThatIsWelded) {
  const auto of = [](const char* sheet, double ksi) {
    return ready_with("  sheet: 10 ga steel\n",
                      fmt::format("  sheet: {}\n  yield: {} ksi\n  ultimate: 90 ksi\n", sheet, ksi));
  };
  expect_from("yield_of_no_welded_sheet", of("10 ga steel", 60.0), of("10 ga steel", 60.1));
  expect_from("yield_of_no_welded_sheet", of("10 ga stainless", 65.0), of("10 ga stainless", 65.1));
  expect_from("yield_of_no_welded_sheet", of("1/4 in aluminium", 24.0), of("1/4 in aluminium", 24.1));
}

}  // namespace
}  // namespace riserun::plan
