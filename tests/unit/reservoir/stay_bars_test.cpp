#include "reservoir/stay_bars.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::reservoir {
namespace {

const Stress kAllowed = stress_pascals(21.6e3 * kPascalsPerPsi);
const Stress kSteel = stress_pascals(29.0e6 * kPascalsPerPsi);
const Density kOfWater = kilograms_per_cubic_metre(1000.0);

std::vector<StayBars> bars_of(const SupportLayout& supports, double psi, double water_inches = 0.0) {
  return stay_bars({inches(48), inches(24), inches(14)}, inches(0.1345), supports,
                   {psig(psi), inches(water_inches), kOfWater}, kAllowed, kSteel, {inches(0.1345), WeldMetal::steel});
}

TEST(StayBars, AcrossALidStandTheBendingOfTheirStrip) {
  SupportLayout supports;
  supports.lid = WallBays{3, 1};
  const auto bars = bars_of(supports, 3.0);
  ASSERT_EQ(bars.size(), 1u);
  EXPECT_EQ(bars[0].wall, "lid");
  EXPECT_EQ(bars[0].count, 2);
  EXPECT_NEAR(in_inches(bars[0].length), 24.0, 1e-9);
  EXPECT_NEAR(in_pounds_force(bars[0].load), 3.0 * 16.0 * 24.0, 1e-6);
  // By hand: M = F L / 8 = 1152 lbf x 24 in / 8 = 3456 lbf in; Z = M / 21.6 ksi = 0.160 in3.
  const double h = in_inches(bars[0].height);
  const double t = in_inches(bars[0].thickness);
  EXPECT_GE(t * h * h / 6.0, 0.160);
  EXPECT_LT(t * (h - 0.25) * (h - 0.25) / 6.0, 0.160);
  EXPECT_NEAR(t, 1.0 / 4.0, 1e-9);  // of 3/16 in it would be slender
  EXPECT_LE(h, kHeightOfBar * t + 1e-9);
  // ... and bulge less than a 360th of their length: 5 F L^3 / (384 E I).
  EXPECT_LE(5.0 * 1152.0 * std::pow(24.0, 3) / (384.0 * 29.0e6 * t * h * h * h / 12.0), 24.0 / 360.0);
}

TEST(StayBars, OfLongSpansAreAsStiffAsTheyAreStrong) {
  SupportLayout supports;
  supports.lid = WallBays{1, 2};
  const auto bars = bars_of(supports, 1.0);
  ASSERT_EQ(bars.size(), 1u);
  const double h = in_inches(bars[0].height);
  const double t = in_inches(bars[0].thickness);
  const double load = 1.0 * 12.0 * 48.0;
  const auto bulge = [&](double height) {
    return 5.0 * load * std::pow(48.0, 3) / (384.0 * 29.0e6 * t * std::pow(height, 3) / 12.0);
  };
  EXPECT_LE(bulge(h), 48.0 / 360.0);
  EXPECT_GT(bulge(h - 0.25), 48.0 / 360.0);  // what decides here
}

TEST(StayBars, OfSidesAndFloorCarryTheWaterAsWell) {
  SupportLayout supports;
  supports.floor = WallBays{2, 1};
  supports.long_side = WallBays{4, 1};
  supports.short_side = WallBays{1, 2};
  const auto bars = bars_of(supports, 2.0, 10.0);
  ASSERT_EQ(bars.size(), 3u);
  const double psi = 2.0 + 10.0 * 0.0254 * 1000.0 * 9.80665 / kPascalsPerPsi;
  EXPECT_NEAR(in_pounds_force(bars[0].load), psi * 24.0 * 24.0, 1e-3);
  EXPECT_EQ(bars[1].wall, "long sides");
  EXPECT_EQ(bars[1].count, 6);  // three on each
  EXPECT_NEAR(in_inches(bars[1].length), 14.0, 1e-9);
  EXPECT_NEAR(in_pounds_force(bars[1].load), psi * 12.0 * 14.0, 1e-3);
  EXPECT_EQ(bars[2].wall, "short sides");
  EXPECT_EQ(bars[2].count, 2);
  EXPECT_NEAR(in_inches(bars[2].length), 24.0, 1e-9);
  supports.floor_carried = true;
  EXPECT_EQ(bars_of(supports, 2.0, 10.0).size(), 2u);
}

TEST(StayBars, ThatArePostsTieLidAndFloor) {
  SupportLayout supports;
  supports.lid = WallBays{4, 3};
  supports.lid_stays_are_posts = true;
  const auto bars = bars_of(supports, 14.0);
  ASSERT_EQ(bars.size(), 1u);
  EXPECT_EQ(bars[0].wall, kTies);
  EXPECT_EQ(bars[0].count, 6);
  EXPECT_NEAR(in_inches(bars[0].length), 14.0, 1e-9);
  EXPECT_NEAR(in_pounds_force(bars[0].load), 14.0 * 12.0 * 8.0, 1e-6);
  EXPECT_NEAR(in_inches(bars[0].height), 0.5, 1e-9);  // 1344 lbf on 21.6 ksi asks a quarter of it
}

// By hand, of a tank 44 in by 22 in with three plates of 0.1345 in across it and one along: clear bays of
// (44 - 3 x 0.1345) / 4 = 10.899 in by (22 - 0.1345) / 2 = 10.933 in. Eight bays along by four across leave each of
// them one row either way.
std::vector<StayBars> bars_between_baffles(bool posts) {
  SupportLayout supports;
  supports.baffles_across = 3;
  supports.baffles_along = 1;
  supports.lid = WallBays{8, 4};
  supports.floor = WallBays{8, 4};
  supports.long_side = WallBays{6, 1};
  supports.short_side = WallBays{2, 1};
  supports.lid_stays_are_posts = posts;
  return stay_bars({inches(44), inches(22), inches(13)}, inches(0.1345), supports, {psig(3.0), inches(9), kOfWater},
                   kAllowed, kSteel, {inches(0.1345), WeldMetal::steel});
}

TEST(StayBars, ThatArePostsStandOneInEachBayOfBaffles) {
  const auto bars = bars_between_baffles(true);
  ASSERT_EQ(bars.size(), 2u);
  EXPECT_EQ(bars[0].wall, kTies);
  EXPECT_EQ(bars[0].count, 8);  // of 7 x 3 crossings 13 fall in baffles
  EXPECT_NEAR(in_pounds_force(bars[0].load), 3.0 * 5.5 * 5.5, 1e-6);
  // Of five uprights on each long side the third stands where the middle baffle does; on the short sides, the only one.
  EXPECT_EQ(bars[1].wall, "long sides");
  EXPECT_EQ(bars[1].count, 8);
}

TEST(StayBars, AreInPiecesBetweenBafflesAndBetweenTheBarsThatTheyCross) {
  const auto bars = bars_between_baffles(false);
  ASSERT_EQ(bars.size(), 5u);
  for (const std::size_t of_wall : {0u, 2u}) {
    const StayBars& through = bars[of_wall];
    const StayBars& between = bars[of_wall + 1];
    EXPECT_EQ(through.wall, of_wall == 0 ? "lid" : "floor");
    EXPECT_EQ(through.count, 4 * 2);
    EXPECT_NEAR(in_inches(through.length), 10.933, 1e-3);
    EXPECT_EQ(between.wall, through.wall);
    EXPECT_EQ(between.count, 2 * 8);
    EXPECT_NEAR(in_inches(between.length), (10.899 - in_inches(through.thickness)) / 2.0, 1e-3);
  }
  EXPECT_NEAR(in_pounds_force(bars[0].load), 3.0 * 10.933 * 5.5, 0.1);
}

// 48 in by 24 in, two bars of 24 in at 16 and 32 in; the row along is in three: to each end, and between the two.
TEST(StayBars, ThatCrossAreNotNotched) {
  SupportLayout supports;
  supports.lid = WallBays{3, 2};
  const auto bars = bars_of(supports, 3.0);
  ASSERT_EQ(bars.size(), 3u);
  const double thickness = in_inches(bars[0].thickness);
  EXPECT_EQ(bars[0].count, 2);
  EXPECT_NEAR(in_inches(bars[0].length), 24.0, 1e-9);
  EXPECT_EQ(bars[1].count, 2);
  EXPECT_NEAR(in_inches(bars[1].length), 16.0 - thickness / 2.0, 1e-9);
  EXPECT_EQ(bars[2].count, 1);
  EXPECT_NEAR(in_inches(bars[2].length), 16.0 - thickness, 1e-9);
  EXPECT_EQ(bars[1].height, bars[2].height);
}

TEST(StayBars, ThatNoFlatBarIsHaveNoHeight) {
  SupportLayout supports;
  supports.lid = WallBays{2, 1};
  const auto bars = stay_bars({inches(240), inches(200), inches(14)}, inches(0.1345), supports,
                              {psig(10.0), {}, kOfWater}, kAllowed, kSteel, {inches(0.1345), WeldMetal::steel});
  ASSERT_EQ(bars.size(), 1u);
  EXPECT_EQ(in_inches(bars[0].height), 0.0);
}

TEST(StayBars, AreNotMadeOfBafflesOrOfAWidestBarePanel) {
  SupportLayout baffles;
  baffles.baffles_across = 2;
  EXPECT_TRUE(bars_of(baffles, 2.0).empty());
  SupportLayout bare;
  bare.bare = BarePanel{inches(12), inches(10)};
  EXPECT_TRUE(bars_of(bare, 2.0).empty());
}

}  // namespace
}  // namespace riserun::reservoir
