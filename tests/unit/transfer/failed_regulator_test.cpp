#include "transfer/failed_regulator.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::transfer {
namespace {

/// 1/4 in feed under a 1 in riser that lifts three feet: an invented shop.
System shop() {
  System s;
  s.reservoir = {inches(54), inches(22), inches(14), 0.0};
  s.table = {inches(60), inches(30), inches(30), inches(5), 0.0};
  s.riser_end_height = inches(0.5);
  hydraulics::LineElement riser;
  riser.name = "riser";
  riser.bore = inches(1.049);
  riser.length = inches(30);
  riser.roughness = millimetres(0.046);
  s.line = hydraulics::Line({riser}, {0.78, 1.0, 0.0, ""}, {0.5, 1.0, 0.0, ""});
  s.water = {kilograms_per_cubic_metre(998.2), pascal_seconds(1.0e-3), absolute_pascals(2339.0)};
  s.temperature = degrees_celsius(20.0);
  s.atmosphere = absolute_pascals(101325.0);
  s.air.feed_bore = inches(0.25);
  s.air.feed_discharge_coefficient = 0.8;
  return s;
}

TEST(FailedRegulator, AQuarterInchFeedAtHundredPsiHoldsAboutFiftyUnderAnInchRiser) {
  // A hand model of the trade notes gives "about 50 psi", good to about 10 %.
  const FailedRegulator r = failed_regulator_pressure(shop(), psig(100.0));
  EXPECT_NEAR(in_psi(r.lifting), 50.0, 7.5);
  EXPECT_EQ(r.highest, r.lifting);
  EXPECT_LT(r.blowing, r.lifting);
}

/// kg/s of air from a pressure [Pa absolute] through the shop's riser, by hand: Crane TP-410, complete isothermal
/// equation (from memory), its friction by Colebrook's at a Reynolds number of 1e5; choked where less pressure behind
/// passes no more.
double blown_by_hand(double pressure) {
  const double bore = 1.049 * 0.0254;
  double root = 7.0;  // 1 / sqrt(f)
  for (int step = 0; step < 50; ++step) root = -2.0 * std::log10(0.046e-3 / (3.7 * bore) + 2.51 * root / 1.0e5);
  const double loss = 30.0 * 0.0254 / bore / (root * root) + 0.78 + 1.0;
  double most = 0.0;
  for (double behind = 101325.0; behind < pressure; behind += (pressure - 101325.0) / 20000.0)
    most = std::max(most, (pressure * pressure - behind * behind) / (loss + 2.0 * std::log(pressure / behind)));
  return std::numbers::pi / 4.0 * bore * bore * std::sqrt(most / (287.055 * 293.15));
}

TEST(FailedRegulator, BlowsAsMuchThroughTheDryRiserAsComesIn) {
  for (const double feed : {0.1, 0.25, 0.5, 0.8}) {
    System s = shop();
    s.air.feed_bore = inches(feed);
    const GaugePressure held = failed_regulator_pressure(s, psig(100.0)).blowing;
    const double comes = in_kilograms_per_second(line_with_failed_regulator(s.air).flow(
        absolute(psig(100.0), s.atmosphere), absolute(held, s.atmosphere), s.temperature));
    EXPECT_NEAR(blown_by_hand(in_pascals(absolute(held, s.atmosphere))), comes, 2.0e-3 * comes) << feed;
  }
}

TEST(FailedRegulator, HoldsMoreWithMoreSupplyAndAWiderFeed) {
  System s = shop();
  const GaugePressure base = failed_regulator_pressure(s, psig(100.0)).highest;
  EXPECT_GT(failed_regulator_pressure(s, psig(120.0)).highest, base);
  s.air.feed_bore = inches(0.3);
  EXPECT_GT(failed_regulator_pressure(s, psig(100.0)).highest, base);
  s.air.feed_bore = inches(3.0);
  EXPECT_NEAR(in_psi(failed_regulator_pressure(s, psig(100.0)).highest), 100.0, 1.0);
}

TEST(FailedRegulator, NeverFallsBelowTheLift) {
  System s = shop();
  s.air.feed_bore = inches(0.01);
  const double lift = 34.5 * quantity::kMetresPerInch * 998.2 * quantity::kStandardGravity;
  EXPECT_GT(in_pascals(failed_regulator_pressure(s, psig(100.0)).highest), lift);
  EXPECT_NEAR(in_pascals(failed_regulator_pressure(s, psig(100.0)).highest), lift, 50.0);
  s.air.feed_bore = inches(0.0);
  EXPECT_EQ(in_pascals(failed_regulator_pressure(s, psig(100.0)).blowing), 0.0);
}

TEST(FailedRegulator, TheRestrictorCapsItAtTheLimit) {
  System s = shop();
  for (const double limit : {1.6, 3.1, 10.0, 30.0}) {
    const auto bore = restrictor_bore(s, psig(100.0), psig(limit));
    ASSERT_TRUE(bore.has_value()) << limit;
    EXPECT_LT(*bore, inches(0.25));
    const System restricted = with_restrictor(s, *bore);
    EXPECT_NEAR(in_psi(failed_regulator_pressure(restricted, psig(100.0)).highest), limit, 1.0e-6 * limit);
    EXPECT_GT(failed_regulator_pressure(with_restrictor(s, *bore * 1.001), psig(100.0)).highest, psig(limit));
  }
}

/// Opens at 2 psi, wide open half a psi later, on a way as wide as it is.
ReliefValve valve(Length bore) {
  return {hydraulics::AirLine({hydraulics::air_opening("way", bore, 0.8)}), bore, psig(2.0), psig(2.5)};
}

TEST(FailedRegulator, WithTheRiserStoppedAndNoReliefTheSupplyIsReached) {
  EXPECT_NEAR(in_psi(failed_regulator_pressure(shop(), psig(100.0)).riser_stopped), 100.0, 1.0e-9);
}

// Free air through 1/16 in at coefficient 1 and 100 psig is 6.49 scfm (a compressed-air handbook), so 0.82 of it comes
// in; 1/4 in at coefficient 1 passes 12.4 scfm at 3 psi and 10.1 at 2 (the same), so 0.6 of it in a row with the way
// passes that between 2 and 2.5 psi, a good way open.
TEST(FailedRegulator, WithTheRiserStoppedTheReliefValveHoldsWhereItPassesWhatComes) {
  const System s = with_restrictor(shop(), inches(1.0 / 16.0));
  const ReliefValve relief = valve(inches(0.3));
  const FailedRegulator r = failed_regulator_pressure(s, psig(100.0), {relief});
  EXPECT_GT(r.riser_stopped, relief.opens);
  EXPECT_LT(r.riser_stopped, relief.wide_open);
  const double comes = in_kilograms_per_second(line_with_failed_regulator(s.air).flow(
      absolute(psig(100.0), s.atmosphere), absolute(r.riser_stopped, s.atmosphere), s.temperature));
  EXPECT_NEAR(in_kilograms_per_second(relief.flow(r.riser_stopped, s.atmosphere, s.temperature)), comes,
              1.0e-6 * comes);
  EXPECT_NEAR(comes, 0.82 * 6.49 * 4.719474e-4 * 1.2041, 0.02 * comes);
}

// A valve that pops is wide open where it opens; one that begins to open there passes nothing yet.
TEST(FailedRegulator, AReliefValveWithoutARiseIsWideOpenWhereItOpens) {
  const System s = shop();
  ReliefValve pops = valve(inches(0.3));
  const auto at = [&](const ReliefValve& relief, GaugePressure pressure) {
    return in_kilograms_per_second(relief.flow(pressure, s.atmosphere, s.temperature));
  };
  EXPECT_EQ(at(pops, pops.opens), 0.0);
  const double wide = at(pops, pops.wide_open);
  pops.opens = pops.wide_open;
  EXPECT_EQ(at(pops, pops.wide_open), wide);
  EXPECT_EQ(at(pops, pops.wide_open - psi(0.001)), 0.0);
}

TEST(FailedRegulator, AReliefValveThatIsTooSmallLetsThePressureRise) {
  const FailedRegulator r = failed_regulator_pressure(shop(), psig(100.0), {valve(inches(0.25))});
  EXPECT_GT(r.riser_stopped, psig(20.0));
  EXPECT_LT(r.riser_stopped, psig(100.0));
}

TEST(FailedRegulator, TheRestrictorIsSizedForTheReliefValveWhereThereIsOne) {
  const std::vector<ReliefValve> relief{valve(inches(0.5))};
  const auto bore = restrictor_bore(shop(), psig(100.0), psig(3.0), relief);
  ASSERT_TRUE(bore);
  EXPECT_NEAR(in_psi(failed_regulator_pressure(with_restrictor(shop(), *bore), psig(100.0), relief).riser_stopped), 3.0,
              1.0e-5);
  EXPECT_FALSE(restrictor_bore(shop(), psig(100.0), psig(1.99), relief)) << "below its opening no hole is small enough";
}

TEST(FailedRegulator, WhatStandsBehindTheRegulatorHoldsBackToo) {
  System s = shop();
  const GaugePressure base = failed_regulator_pressure(s, psig(100.0)).highest;
  s.air.after_regulator = hydraulics::AirLine({hydraulics::drilled_hole("hole", inches(1.0 / 16.0))});
  EXPECT_LT(failed_regulator_pressure(s, psig(100.0)).highest, base);
}

TEST(FailedRegulator, AFeedThatIsSafeAlreadyStays) {
  EXPECT_EQ(restrictor_bore(shop(), psig(100.0), psig(90.0)), inches(0.25));
}

TEST(FailedRegulator, NoRestrictorHelpsBelowTheLift) {
  EXPECT_FALSE(restrictor_bore(shop(), psig(100.0), psig(1.0)).has_value());
}

}  // namespace
}  // namespace riserun::transfer
