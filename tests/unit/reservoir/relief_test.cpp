#include "reservoir/relief.h"

#include "hydraulics/air.h"

#include <gtest/gtest.h>

namespace riserun::reservoir {
namespace {

const AbsolutePressure kAtmosphere = absolute_pascals(quantity::kStandardAtmosphere);

AirFeed feed(double supply_psi, double bore_in) {
  return {psig(supply_psi), hydraulics::AirLine({hydraulics::air_opening("feed", inches(bore_in), 0.8)}),
          degrees_celsius(20.0)};
}

// Installation manuals: 4 psi for a 3 psi test and 6 psi for 5 psi; a quarter above gives 3.75 and 6.25.
TEST(ReliefSetting, StandsAQuarterAboveThePressureInUse) {
  EXPECT_NEAR(in_psi(*relief_setting(psig(3.0), psig(10.0))), 3.75, 1e-9);
  EXPECT_NEAR(in_psi(*relief_setting(psig(5.0), psig(10.0))), 6.25, 1e-9);
  EXPECT_NEAR(in_psi(*relief_setting(psig(0.6), psig(10.0))), 0.85, 1e-9);
}

TEST(ReliefSetting, NeverPassesTheWallsLimit) {
  EXPECT_EQ(*relief_setting(psig(3.0), psig(3.1)), psig(3.1));
  EXPECT_FALSE(relief_setting(psig(3.1), psig(3.1)));
  EXPECT_FALSE(relief_setting(psig(4.0), psig(3.1)));
}

// Choked flow: 100 psi through 1/4 in is about 81 scfm at a coefficient of 0.8; compressed-air handbooks give 104 scfm
// at a coefficient of 1 (from memory).
TEST(Relief, MustPassAllThatTheFeedGives) {
  const Relief relief = relief_for(psig(2.0), psig(3.0), feed(100.0, 0.25), kAtmosphere);
  EXPECT_NEAR(in_cubic_feet_per_minute(relief.must_pass), 0.8 * 104.0, 3.0);
}

TEST(Relief, ValveBorePassesThatFlowAtTheReliefPressure) {
  const Relief relief = relief_for(psig(2.0), psig(3.0), feed(100.0, 0.25), kAtmosphere);
  const MassFlow through =
      hydraulics::orifice_air_flow(hydraulics::effective_area(relief.valve_bore, 0.6), absolute(psig(2.2), kAtmosphere),
                                   kAtmosphere, degrees_celsius(20.0));
  const VolumeFlow free_air = hydraulics::free_air_of_mass_flow(through, kAtmosphere, degrees_celsius(20.0));
  EXPECT_NEAR(free_air / relief.must_pass, 1.0, 1e-9);
  EXPECT_GT(relief.valve_bore, inches(0.25));
}

TEST(Relief, AtTheWallsLimitNoOverpressureIsCountedOn) {
  const Relief at_limit = relief_for(psig(3.0), psig(3.0), feed(100.0, 0.25), kAtmosphere);
  const Relief below = relief_for(psig(3.0), psig(4.0), feed(100.0, 0.25), kAtmosphere);
  EXPECT_GT(at_limit.valve_bore, below.valve_bore);
}

TEST(Relief, ASupplyBelowTheSettingNeedsNoFlow) {
  const Relief relief = relief_for(psig(2.0), psig(3.0), feed(1.5, 0.25), kAtmosphere);
  EXPECT_EQ(relief.must_pass.value(), 0.0);
  EXPECT_EQ(in_metres(relief.valve_bore), 0.0);
}

TEST(SafetyFactors, FallInProportionToThePressure) {
  const SheetMetal steel = *find_sheet_metal("mild steel");
  const Panel panel{"lid panel", inches(22), inches(18), inches(0.1345), {}};
  const SafetyFactors factors = safety_factors({panel}, steel, psig(1.25), psig(125.0));
  EXPECT_NEAR(factors.at_set_on_yield / factors.at_supply_on_yield, 100.0, 1e-9);
  EXPECT_NEAR(factors.at_set_on_ultimate / factors.at_set_on_yield, 58.0 / 36.0, 1e-12);
  EXPECT_TRUE(factors.set_meets_on_yield());
  EXPECT_FALSE(factors.supply_meets_on_yield());
}

// With 0.6 of yield as limit, 4 on yield is met up to 0.6 / (1/4) = 2.4 times below the limit.
TEST(SafetyFactors, FourOnYieldIsMetUpToTheLimitOverTwoPointFour) {
  const SheetMetal steel = *find_sheet_metal("mild steel");
  const Panel panel{"lid panel", inches(22), inches(18), inches(0.1345), {}};
  const GaugePressure limit = check_walls({panel}, steel, design_stress(steel).stress, {}, psig(1.0)).limit;
  const double four = in_psi(limit) * (1.0 / 0.6) / 4.0;
  EXPECT_TRUE(safety_factors({panel}, steel, psig(four * 0.999), psig(100)).set_meets_on_yield());
  EXPECT_FALSE(safety_factors({panel}, steel, psig(four * 1.001), psig(100)).set_meets_on_yield());
}

// A grid of posts may stand less than its panels do: p = t^2 S C / pitch^2 at the yield, over what stands on it.
TEST(SafetyFactors, OfPostsAreThoseOfTheStayedSurfaceWhereItStandsLess) {
  const SheetMetal steel = *find_sheet_metal("mild steel");
  const Panel panel{"lid panel", inches(12), inches(12), inches(0.1), pascals(0.0)};
  const StayedSurface stayed{inches(0.1), inches(12), psi(0.5)};
  const double stands = 0.1 * 0.1 * 36e3 * 2.1 / (12.0 * 12.0);
  const SafetyFactors bare = safety_factors({panel}, steel, psig(1.0), psig(100));
  const SafetyFactors posts = safety_factors({panel}, steel, psig(1.0), psig(100), stayed);
  ASSERT_LT(stands / 1.5, bare.at_set_on_yield);
  EXPECT_NEAR(posts.at_set_on_yield, stands / 1.5, 1e-6);
  EXPECT_NEAR(posts.at_set_on_ultimate, stands * 58.0 / 36.0 / 1.5, 1e-6);
}

TEST(GaugeChoice, DialIsBetweenOneAndAHalfAndFourTimesThePressure) {
  for (double p = 0.3; p < 60.0; p *= 1.07) {
    const GaugeChoice choice = choose_gauge(psig(p));
    ASSERT_TRUE(choice.full_scale) << p;
    EXPECT_GE(in_psi(*choice.full_scale), 1.5 * p * (1 - 1e-12));
    EXPECT_LE(in_psi(*choice.full_scale), 4.0 * p * (1 + 1e-12));
  }
  EXPECT_FALSE(choose_gauge(psig(0.1)).full_scale);
}

TEST(GaugeChoice, PrefersTheFirstDialAtTwiceThePressure) {
  EXPECT_EQ(*choose_gauge(psig(1.5)).full_scale, psig(3.0));
  EXPECT_EQ(*choose_gauge(psig(3.0)).full_scale, psig(10.0));
  EXPECT_EQ(*choose_gauge(bar_gauge(0.1)).full_scale, psig(3.0));
}

// International Residential Code P2503.9: 0.1 psi marks up to 10 psi, 1 psi to 100 psi, 2 psi above.
TEST(GaugeChoice, MarksAreATenthOfAPsiUpToTenPsi) {
  EXPECT_EQ(choose_gauge(psig(10.0)).mark, psi(0.1));
  EXPECT_EQ(choose_gauge(psig(10.1)).mark, psi(1.0));
  EXPECT_EQ(choose_gauge(psig(101.0)).mark, psi(2.0));
}

// 1 psi is 27.7 in of water.
TEST(WaterColumn, HoseIsTwoLegsOfReadingAndSixInches) {
  const WaterColumn column = water_column_for(psig(1.0), kilograms_per_cubic_metre(998.2));
  EXPECT_NEAR(in_inches(column.reading), 27.7, 0.06);
  EXPECT_NEAR(in_inches(column.leg), 33.7, 0.06);
  EXPECT_NEAR(in_inches(column.hose_length), 67.5, 0.12);
}

}  // namespace
}  // namespace riserun::reservoir
