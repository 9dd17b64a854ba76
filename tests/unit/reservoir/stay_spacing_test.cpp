#include "reservoir/stay_spacing.h"

#include "reservoir/stay_bars.h"

#include <gtest/gtest.h>

namespace riserun::reservoir {
namespace {

WallRequest bare_box(double length, double width, double height, double thickness) {
  WallRequest r;
  r.box = {inches(length), inches(width), inches(height)};
  r.thickness = inches(thickness);
  r.water_depth = inches(8);
  r.water = kilograms_per_cubic_metre(998.2);
  r.metal = *find_sheet_metal("commercial steel sheet");
  r.design_stress = design_stress(r.metal).stress;
  return r;
}

// By hand: 18 ksi, 2.1 t^2 S / pitch^2 = 2.1 x 0.1265^2 x 18000 / 12^2 = 4.20 psi, less 8 in of water, 0.29 psi.
TEST(StaySpacing, StandsWhatIsWantedByTheStayedSurfaceRule) {
  const WallRequest r = bare_box(48, 36, 10, 0.1265);
  const auto spacing = stay_spacing(r, psig(3.9));
  ASSERT_TRUE(spacing);
  EXPECT_NEAR(in_inches(spacing->along), 12.0, 1e-9);
  EXPECT_NEAR(in_inches(spacing->across), 12.0, 1e-9);
  EXPECT_EQ(spacing->stays, 3 * 2);
  EXPECT_GE(spacing->limit, psig(3.9));
  EXPECT_LE(in_psi(spacing->limit), 4.20 - 0.28);
  // Just over what 12 in stand they come closer.
  const auto closer = stay_spacing(r, psig(3.95));
  ASSERT_TRUE(closer);
  EXPECT_GT(closer->stays, 6);
}

TEST(StaySpacing, PromisesTheLimitOfTheBoxBuiltSo) {
  for (const double wanted : {0.5, 1.0, 2.0, 4.0, 8.0, 14.0}) {
    WallRequest r = bare_box(44, 22, 14, 0.1265);
    const auto spacing = stay_spacing(r, psig(wanted));
    ASSERT_TRUE(spacing) << wanted;
    EXPECT_GE(spacing->limit, psig(wanted));
    r.supports = spacing->supports;
    EXPECT_EQ(wall_limit(r), spacing->limit);
  }
}

/// One line of stays fewer, in either direction, or one stiffener fewer, does not do.
TEST(StaySpacing, IsNoCloserThanItMustBe) {
  const auto spacing = stay_spacing(bare_box(44, 22, 14, 0.1265), psig(2.0));
  ASSERT_TRUE(spacing && spacing->stays > 0 && spacing->long_side_stiffeners > 0);
  for (const int way : {0, 1, 2}) {
    WallRequest fewer = bare_box(44, 22, 14, 0.1265);
    fewer.supports = spacing->supports;
    WallBays& bays = way == 2 ? *fewer.supports.long_side : *fewer.supports.lid;
    --(way == 1 ? bays.across : bays.along);
    fewer.supports.floor = fewer.supports.lid;
    if (way == 2 || (bays.along > 1 && bays.across > 1)) {  // with one bay they are rows, no grid
      EXPECT_LT(wall_limit(fewer), psig(2.0)) << way;
    }
  }
}

TEST(StaySpacing, KeepsTheBafflesAndDividesWhatTheyLeave) {
  WallRequest r = bare_box(48, 20, 12, 0.1265);
  r.supports.baffles_across = 2;
  const auto spacing = stay_spacing(r, psig(4.0));
  ASSERT_TRUE(spacing);
  EXPECT_EQ(spacing->supports.baffles_across, 2);
  EXPECT_EQ(lid_bays(spacing->supports).along % 3, 0);
}

// What it says is what is cut: posts between the baffles, and as many uprights in each of their bays.
TEST(StaySpacing, CountsWhatIsCutBetweenTheBaffles) {
  WallRequest r = bare_box(44, 22, 13, 0.1265);
  r.supports.baffles_across = 3;
  r.supports.baffles_along = 1;
  const auto spacing = stay_spacing(r, psig(10.0));
  ASSERT_TRUE(spacing && spacing->stays > 0 && spacing->long_side_stiffeners > 0);
  EXPECT_EQ(long_side_bays(spacing->supports).along % 4, 0);
  EXPECT_EQ(short_side_bays(spacing->supports).along % 2, 0);
  for (const StayBars& bars : stay_bars(r.box, r.thickness, spacing->supports, {psig(10.0), r.water_depth, r.water},
                                        r.design_stress, r.metal.elastic_modulus, {r.thickness, WeldMetal::steel}))
    EXPECT_EQ(bars.count, bars.wall == kTies          ? spacing->stays
                          : bars.wall == "long sides" ? 2 * spacing->long_side_stiffeners
                                                      : 2 * spacing->short_side_stiffeners)
        << bars.wall;
}

// Bars of a lid that stand it are not cut out for posts: the sides alone get what they lack.
TEST(StaySpacing, LeavesALidThatStandsItAsItIs) {
  WallRequest r = bare_box(44, 22, 13, 0.1265);
  r.supports.lid = WallBays{4, 2};
  r.supports.floor_carried = true;
  const auto spacing = stay_spacing(r, psig(3.0));
  ASSERT_TRUE(spacing);
  EXPECT_EQ(spacing->stays, 0);
  EXPECT_GT(spacing->long_side_stiffeners, 0);
  EXPECT_EQ(spacing->supports.lid, (WallBays{4, 2}));
  EXPECT_FALSE(spacing->supports.lid_stays_are_posts || spacing->supports.floor);
  EXPECT_GE(spacing->limit, psig(3.0));
}

TEST(StaySpacing, WithoutNeedOfStaysNamesNone) {
  const auto spacing = stay_spacing(bare_box(44, 22, 14, 0.1265), psig(0.01));
  if (spacing) {
    EXPECT_GE(spacing->limit, psig(0.01));
  }
  WallRequest thick = bare_box(20, 12, 10, 0.25);
  const auto none = stay_spacing(thick, psig(2.0));
  ASSERT_TRUE(none);
  EXPECT_EQ(none->stays, 0);
  EXPECT_TRUE(facts_of(*none).empty());
}

TEST(StaySpacing, OfASheetThatIsTooThinThereIsNone) {
  EXPECT_FALSE(stay_spacing(bare_box(44, 22, 14, 0.005), psig(14.0)));
}

}  // namespace
}  // namespace riserun::reservoir
