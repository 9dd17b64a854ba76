#include "reservoir/test_pressure.h"

#include "unit/report/words/said.h"

#include <gmock/gmock.h>

namespace riserun::reservoir {
namespace {

const AbsolutePressure kOutside = absolute_pascals(quantity::kStandardAtmosphere);

TestPressure choose(double in_use_psi, double limit_psi, double keeps_factor_psi = 3.0) {
  return choose_test_pressure(psig(in_use_psi), psig(limit_psi), psig(keeps_factor_psi), us_gallons(70.0), kOutside);
}

TEST(ChooseTestPressure, KeepsTheFactorOfFourWhereUseDoes) {
  EXPECT_EQ(*choose(1.2, 3.1, 1.3).pressure, psig(1.2));
  EXPECT_EQ(*choose(0.7, 3.1, 1.3).pressure, psig(1.0));
  EXPECT_EQ(choose(0.7, 3.1, 1.3).basis.code, "test_that_keeps_the_factor");
  EXPECT_EQ(*choose(2.0, 3.1, 1.3).pressure, psig(2.0));
}

TEST(CheckTestPressure, LetsInWhatItsRefusalPrints) {
  const auto check = [](double asked_psi) {
    return check_test_pressure(psig(asked_psi), psig(7.139), us_gallons(70.0), kOutside);
  };
  EXPECT_FALSE(check(5.96).pressure);
  EXPECT_TRUE(check(5.94).pressure);
  EXPECT_LT(std::get<GaugePressure>(check(5.96).basis.values[2]), psig(5.945));
}

TEST(ChooseTestPressure, TakesTheLeastOfTheStandardWhereTheWallsAllowIt) {
  const TestPressure test = choose(1.2, 3.1);
  EXPECT_EQ(*test.pressure, psig(1.5));
  EXPECT_GT(test.relief, *test.pressure);
  EXPECT_LE(test.relief, psig(3.1));
  EXPECT_EQ(*test.gauge.full_scale, psig(3.0));
  EXPECT_DOUBLE_EQ(in_metres(test.energy.standoff), 30.0);
}

TEST(ChooseTestPressure, FollowsThePressureInUseUpToThreePsi) {
  EXPECT_EQ(*choose(2.2, 10.0).pressure, psig(2.2));
  EXPECT_EQ(*choose(5.0, 10.0).pressure, psig(3.0));
}

TEST(ChooseTestPressure, WeakWallsAreTestedAtOnePsi) {
  const TestPressure test = choose(0.8, 1.4);
  EXPECT_EQ(*test.pressure, psig(1.0));
  EXPECT_LE(test.relief, psig(1.4));
  EXPECT_EQ(choose(2.5, 2.0).pressure, psig(1.5));
}

TEST(ChooseTestPressure, WallsTooWeakForAirAreRefusedWithTheMend) {
  const TestPressure test = choose(0.8, 1.1);
  EXPECT_FALSE(test.pressure);
  EXPECT_EQ(report::said(test.basis),
            "The walls stand 1.1 psi (30 in water) at most, and a test with air needs 1 psi (28 in water) and a relief "
            "valve below the walls' limit: add stays until the limit is 1.2 psi (33 in water), or fill with water and "
            "look for drips.");
}

TEST(CheckTestPressure, PressureOverTheWallsLimitIsRefusedWithBothNumbers) {
  const TestPressure test = check_test_pressure(psig(2.0), psig(1.4), us_gallons(28.0), kOutside);
  EXPECT_FALSE(test.pressure);
  EXPECT_EQ(report::said(test.basis),
            "A test at 2 psi (55 in water) is refused: the walls stand 1.4 psi (39 in water) at most, and the relief "
            "valve must stand between the two, so test at 1.16 psi (32 in water) or less, or add stays.");
  EXPECT_TRUE(check_test_pressure(psig(1.0), psig(1.4), us_gallons(28.0), kOutside).pressure);
}

}  // namespace
}  // namespace riserun::reservoir
