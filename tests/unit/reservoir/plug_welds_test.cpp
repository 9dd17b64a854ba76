// Holes and slots in a lid over what stands below: wide enough for torch and load, and no wider than what is under
// them.
#include "reservoir/plug_welds.h"

#include "reservoir/stay_bars.h"

#include <gtest/gtest.h>

namespace riserun::reservoir {
namespace {

constexpr double kNewtonsPerPound = kKilogramsPerPound * kStandardGravity;
const Stress kOfBars = stress_pascals(21.6e3 * kPascalsPerPsi);
const Stress kStiff = stress_pascals(29.0e6 * kPascalsPerPsi);

// AWS D1.1 2.4.3 (from memory): the thickness and 5/16 in, to the next sixteenth. By hand: 10 ga 0.1345 + 0.3125 =
// 0.447, 1/4 in 0.5625 in.
TEST(PlugHole, IsNoNarrowerThanTheStandardHasIt) {
  EXPECT_DOUBLE_EQ(in_inches(plug_hole({}, inches(0.1345), WeldMetal::steel)), 0.5);
  EXPECT_DOUBLE_EQ(in_inches(plug_hole({}, inches(0.25), WeldMetal::steel)), 0.5625);
}

// 4000 lbf on 11.5 ksi / 1.95 (Aluminum Design Manual, from memory) ask 0.678 sq in: 0.929 in across.
TEST(PlugHole, CarriesItsPost) {
  EXPECT_DOUBLE_EQ(in_inches(plug_hole(newtons(4000.0 * kNewtonsPerPound), inches(0.25), WeldMetal::aluminium)),
                   0.9375);
}

// A weld that is filled into a hole needs metal at its foot, all across.
TEST(Post, IsAsWideAsTheHoleOverIt) {
  SupportLayout supports;
  supports.lid = WallBays{4, 2};
  supports.lid_stays_are_posts = true;
  for (const WeldMetal metal : {WeldMetal::steel, WeldMetal::stainless_steel, WeldMetal::aluminium})
    for (const double lid : {0.0747, 0.1345, 0.25, 0.375, 0.5})
      for (const double air : {1.0, 3.0, 10.0, 14.0}) {
        const auto bars =
            stay_bars({inches(44), inches(22), inches(13)}, inches(lid), supports,
                      {psig(air), {}, kilograms_per_cubic_metre(1000.0)}, kOfBars, kStiff, {inches(lid), metal});
        ASSERT_EQ(bars.size(), 1u);
        EXPECT_LE(in_inches(plug_hole(bars[0].load, inches(lid), metal)), in_inches(bars[0].thickness) + 1e-9)
            << lid << " " << air;
      }
}

TEST(Slot, IsNoWiderThanWhatStandsUnderIt) {
  EXPECT_DOUBLE_EQ(in_inches(slot_width(inches(0.1875), inches(0.25))), 0.25);
  EXPECT_DOUBLE_EQ(in_inches(slot_width(inches(0.15625), inches(0.15625))), 0.125);  // as a rule shows it
  EXPECT_DOUBLE_EQ(in_inches(slot_width(inches(0.1875), inches(0.75))), 0.5);        // as wide as a plug hole is enough
}

// 11 ga is 0.1196 in, 12 ga 0.1046 in, 14 ga 0.0747 in: by the sixteenth below 1/16 in, which no disc cuts.
TEST(Baffle, IsOfThickerPlateWhereItsSlotsWereTooNarrow) {
  for (const double sheet : {0.1196, 0.1046, 0.0747, 0.0598})
    EXPECT_DOUBLE_EQ(in_inches(baffle_plate(inches(sheet))), 0.1875) << sheet;
  for (const double sheet : {0.125, 0.1345, 0.1875, 0.5})
    EXPECT_DOUBLE_EQ(in_inches(baffle_plate(inches(sheet))), sheet);
}

// A square edge to 1/4 in where the slot is as wide as the lid is thick (AWS D1.1, joint B-L1a, from memory).
TEST(Slot, IsBevelledWhereNoTorchComesToItsFoot) {
  EXPECT_FALSE(is_bevelled(inches(0.1345), inches(0.1345)));
  EXPECT_FALSE(is_bevelled(inches(0.25), inches(0.25)));
  EXPECT_FALSE(is_bevelled(inches(0.1875), inches(0.25)));
  EXPECT_TRUE(is_bevelled(inches(0.125), inches(0.25)));
  EXPECT_TRUE(is_bevelled(inches(0.375), inches(0.375)));
  EXPECT_FALSE(is_bevelled(inches(0.6875), inches(0.375)));
}

// By hand for 3/16 in: ten times is 1.875, down to 1-3/4 in; 24 times is 4.5 in.
TEST(Slots, StandAsCloseAsTheStandardsHaveThem) {
  const SlotRow row = slots_along({}, inches(0.1875), inches(0.1875), WeldMetal::steel);
  EXPECT_DOUBLE_EQ(in_inches(row.length), 1.75);
  EXPECT_DOUBLE_EQ(in_inches(row.apart), 4.5);
  EXPECT_EQ(slots_in(inches(20.0), row), 5);
  EXPECT_EQ(slots_in(inches(18.0), row), 4);
  EXPECT_EQ(slots_in(inches(1.0), row), 1);
}

// 1.75 in x 0.1875 in at 18 ksi carry 5906 lbf: of 2000 lbf on each inch those of 2.95 in, down to 2-3/4.
TEST(Slots, CarryTheirRow) {
  const auto load = newtons(2000.0 * kNewtonsPerPound) / inches(1.0);
  const SlotRow row = slots_along({load, {}}, inches(0.1875), inches(0.1875), WeldMetal::steel);
  EXPECT_DOUBLE_EQ(in_inches(row.apart), 2.75);
}

// The code's 12 in of 1/2 in sheet would leave a panel of 5-1/2 in held at every second of its corners alone.
TEST(Slots, StandNoFartherApartThanTheRowsThatTheyMake) {
  EXPECT_DOUBLE_EQ(in_inches(slots_along({}, inches(0.5), inches(0.5), WeldMetal::steel).apart), 12.0);
  EXPECT_DOUBLE_EQ(in_inches(slots_along({{}, inches(5.5)}, inches(0.5), inches(0.5), WeldMetal::steel).apart), 5.5);
}

}  // namespace
}  // namespace riserun::reservoir
