// Loss at the riser's lower end against the handbook's rows.
#include "reservoir/riser.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace riserun::reservoir {
namespace {

// Idelchik, Handbook of Hydraulic Resistance, 3rd ed., section 3, inlet into a straight tube with a wall facing it,
// from memory: what the wall adds to K. Free end: Crane TP-410 A-29, inward projecting, 0.78.
struct Row {
  double clearance_to_bore, added;
};
const std::vector<Row> kIdelchik = {{0.2, 1.6},  {0.3, 0.65}, {0.4, 0.37}, {0.5, 0.25},
                                    {0.6, 0.15}, {0.7, 0.07}, {0.8, 0.04}, {1.0, 0.0}};

TEST(RiserInlet, AddsIdelchiksFloorLossToCranesFreeEnd) {
  for (const Row& row : kIdelchik) {
    EXPECT_NEAR(riser_inlet(row.clearance_to_bore).entry_k, 0.78 + row.added, 1.0e-12) << row.clearance_to_bore;
  }
  EXPECT_DOUBLE_EQ(riser_inlet(5.0).entry_k, 0.78);
  EXPECT_DOUBLE_EQ(riser_inlet(5.0).exit_k, 1.0);  // Crane TP-410 A-29
}

// Below s/D = 0.2 the gap's velocity head governs: as 1/s^2 from Idelchik's last value.
TEST(RiserInlet, GrowsAsTheInverseSquareWhereTheGapGoverns) {
  EXPECT_NEAR(riser_inlet(0.1).entry_k, 0.78 + 4.0 * 1.6, 1.0e-12);
  EXPECT_NEAR(riser_inlet(0.05).entry_k, 0.78 + 16.0 * 1.6, 1.0e-12);
}

// Idelchik for a thick-walled end: 0.5. The range of the free end reaches down to it.
TEST(RiserInlet, RangeOfTheFreeEndReachesTheThickWalledEnd) {
  const hydraulics::LineEnd end = riser_inlet(2.0);
  EXPECT_NEAR(end.entry_k * (1.0 - end.scatter), 0.5, 1.0e-12);
}

// The gap's velocity head with Cc = 0.6 is the upper estimate (areas: pi D s against pi D^2 / 4).
TEST(RiserInlet, RangeReachesTheGapsVelocityHeadCloseToTheFloor) {
  for (const double s : {0.05, 0.1, 0.15, 0.2, 0.25}) {
    const hydraulics::LineEnd end = riser_inlet(s);
    const double gap = std::pow(1.0 / (4.0 * 0.6 * s), 2);
    EXPECT_GE(end.entry_k * (1.0 + end.scatter), gap * (1.0 - 1.0e-12)) << s;
    EXPECT_NEAR(end.exit_k, gap, 1.0e-12 * gap) << s;
  }
}

// Crane TP-410 A-29: any exit loses one velocity head, which is all a free end loses and the least a stopped one does.
TEST(RiserInlet, ExitsRangeReachesTheFreeExit) {
  EXPECT_DOUBLE_EQ(riser_inlet(2.0).exit_k, 1.0);
  EXPECT_DOUBLE_EQ(riser_inlet(2.0).exit_scatter, 0.0);
  const hydraulics::LineEnd close = riser_inlet(0.1);
  EXPECT_NEAR(close.exit_k * (1.0 - close.exit_scatter), 1.0, 1.0e-12);
}

TEST(RiserInlet, FallsWithoutJumpsAsTheClearanceGrows) {
  double last = riser_inlet(0.05).entry_k;
  for (int step = 1; step <= 2000; ++step) {
    const double s = 0.05 + step * 0.0006;
    const double k = riser_inlet(s).entry_k;
    EXPECT_LE(k, last + 1.0e-12) << s;
    EXPECT_LT(last - k, 0.04 * last) << s;
    last = k;
  }
}

}  // namespace
}  // namespace riserun::reservoir
