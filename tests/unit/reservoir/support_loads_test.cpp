#include "reservoir/support_loads.h"

#include <gtest/gtest.h>

namespace riserun::reservoir {
namespace {

TEST(SupportLoads, ARowCarriesItsStripOfTheLid) {
  SupportLayout supports;
  supports.baffles_across = 2;
  const SupportLoads loads = support_loads({inches(54), inches(22), inches(14)}, supports, psig(3.0));
  EXPECT_NEAR(in_pounds_force(loads.lid), 3.0 * 54 * 22, 1e-6);
  EXPECT_EQ(loads.rows_across, 2);
  EXPECT_NEAR(in_pounds_force(loads.each_row_across), 3.0 * 18 * 22, 1e-6);
  EXPECT_NEAR(in_pounds_per_inch(loads.weld_of_row_across), 3.0 * 18, 1e-9);
  EXPECT_NEAR(in_pounds_per_inch(loads.weld_of_edge), 3.0 * 18 / 2, 1e-9);
  EXPECT_EQ(in_newtons(loads.each_row_along), 0.0);
  EXPECT_EQ(loads.posts, 0);
}

TEST(SupportLoads, APostCarriesItsBay) {
  SupportLayout supports;
  supports.lid = WallBays{4, 3};
  supports.lid_stays_are_posts = true;
  const SupportLoads loads = support_loads({inches(48), inches(36), inches(12)}, supports, psig(2.0));
  EXPECT_EQ(loads.posts, 6);
  EXPECT_NEAR(in_pounds_force(loads.each_post), 2.0 * 12 * 12, 1e-6);
  EXPECT_EQ(loads.rows_across + loads.rows_along, 0);
}

// Eight bays by four of 5.5 in, three plates across and one along: one post in the middle of each of their eight bays,
// and a strip of 5.5 in on each inch of a plate.
TEST(SupportLoads, OfPostsBetweenBafflesAreTheBafflesToo) {
  SupportLayout supports;
  supports.baffles_across = 3;
  supports.baffles_along = 1;
  supports.lid = WallBays{8, 4};
  supports.lid_stays_are_posts = true;
  const SupportLoads loads = support_loads({inches(44), inches(22), inches(13)}, supports, psig(2.0));
  EXPECT_EQ(loads.posts, 8);
  EXPECT_NEAR(in_pounds_force(loads.each_post), 2.0 * 5.5 * 5.5, 1e-6);
  EXPECT_EQ(loads.rows_across, 3);
  EXPECT_EQ(loads.rows_along, 1);
  EXPECT_NEAR(in_pounds_force(loads.each_row_across), 2.0 * 5.5 * 22.0, 1e-6);
  EXPECT_NEAR(in_pounds_per_inch(loads.weld_of_row()), 2.0 * 5.5, 1e-9);
}

TEST(SupportLoads, OfAWidestBarePanelAreThoseBetweenFourSuch) {
  SupportLayout supports;
  supports.bare = BarePanel{inches(20), inches(12)};
  const SupportLoads loads = support_loads({inches(40), inches(24), inches(12)}, supports, psig(2.0));
  EXPECT_NEAR(in_pounds_force(loads.each_post), 2.0 * 20 * 12, 1e-6);
  EXPECT_NEAR(in_pounds_per_inch(loads.weld_of_row()), 2.0 * 12, 1e-9);
  EXPECT_NEAR(in_pounds_per_inch(loads.weld_of_edge), 2.0 * 6, 1e-9);
}

// What all stays and the seam carry together is what the air lifts the lid with.
TEST(SupportLoads, OfPostsAndTheSeamAddUpToTheLid) {
  SupportLayout supports;
  supports.lid = WallBays{5, 4};
  supports.lid_stays_are_posts = true;
  const SupportLoads loads = support_loads({inches(50), inches(40), inches(12)}, supports, psig(2.0));
  const double posts = loads.posts * in_pounds_force(loads.each_post);
  const double seam = 2.0 * (50.0 + 40.0) * in_pounds_per_inch(loads.weld_of_edge) - 4.0 * 2.0 * 5.0 * 5.0;
  EXPECT_NEAR(posts + seam, in_pounds_force(loads.lid), 1e-6);
}

// E60 fillets at 0.30 of 60 ksi on 0.707 of the leg: 1.591, 2.386, 3.182 kip on an inch of 1/8, 3/16, 1/4 in (worked
// beside this program from AWS D1.1 and AISC allowable stress design).
TEST(WeldThroat, IsThatOfTheWorkedFillets) {
  for (const auto& [leg, kip] : {std::pair{0.125, 1.591}, std::pair{0.1875, 2.386}, std::pair{0.25, 3.182}}) {
    const Force force = newtons(kip * 1000.0 * 4.4482216);
    EXPECT_NEAR(in_inches(weld_throat(force / inches(1.0), WeldMetal::steel)), 0.7071 * leg, 2e-4) << leg;
    EXPECT_NEAR(in_inches(weld_length(force, inches(leg), WeldMetal::stainless_steel)), 1.0, 1e-3) << leg;
  }
}

// Filler 4043 breaks in shear at 11.5 ksi, 5356 at 17 ksi (Aluminum Design Manual, from memory); a factor of 1.95.
TEST(WeldThroat, OfAluminiumIsThreeTimesThatOfSteel) {
  const Force force = newtons(720.0 * 4.4482216);
  EXPECT_NEAR(in_inches(weld_length(force, inches(0.125), WeldMetal::aluminium)), 720.0 / (0.0884 * 11500.0 / 1.95),
              2e-3);
  EXPECT_NEAR(in_inches(weld_throat(force / inches(1.0), WeldMetal::aluminium)), 720.0 * 1.95 / 11500.0, 1e-4);
}

// AISC J2.2b.
TEST(WeldLength, IsNoLessThanFourLegs) {
  EXPECT_DOUBLE_EQ(in_inches(weld_length(newtons(10.0), inches(0.125), WeldMetal::steel)), 0.5);
}

// AWS D1.1:2025 Table 7.7 by the thinner part; AISC J2.2b: along the edge of sheet under 1/4 in no more than the sheet.
TEST(FilletLeg, IsNeverUnderTheLeastThatIsWelded) {
  const Length hair = inches(0.0063);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.1345))), 0.125);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.25))), 0.125);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.26))), 0.1875);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.5))), 0.1875);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.51))), 0.25);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(1.0))), 0.3125);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(hair, inches(0.0747))), 0.0747);
}

TEST(FilletLeg, CarriesTheThroatOnOneSide) {
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(inches(0.7071 * 0.1875), inches(0.1875))), 0.1875);
  EXPECT_DOUBLE_EQ(in_inches(fillet_leg(inches(0.14), inches(0.1875))), 0.25);
}

}  // namespace
}  // namespace riserun::reservoir
