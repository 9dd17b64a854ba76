#include "reservoir/walls.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace riserun::reservoir {
namespace {

const SheetMetal& steel() {
  static const SheetMetal metal = *find_sheet_metal("mild steel");
  return metal;
}

Panel lid(double length_in, double width_in, double thickness_in) {
  return {"lid panel", inches(length_in), inches(width_in), inches(thickness_in), {}};
}

TEST(CheckWalls, AtItsLimitThePanelIsAtTheDesignStress) {
  const Stress design = steel().yield * 0.6;
  const GaugePressure limit = check_walls({lid(22, 18, 0.1345)}, steel(), design, {}, psig(1.0)).limit;
  const PanelResult at_limit = check_walls({lid(22, 18, 0.1345)}, steel(), design, {}, limit).panels.front();
  EXPECT_NEAR(at_limit.stress() / design, 1.0, 1.0e-12);
  EXPECT_NEAR(at_limit.factor_on_yield, 1.0 / 0.6, 1.0e-12);
  EXPECT_NEAR(at_limit.factor_on_ultimate, 58.0 / 36.0 / 0.6, 1.0e-12);
}

TEST(CheckWalls, StandingWaterIsTakenOffTheAirLimit) {
  Panel floor = lid(22, 18, 0.1345);
  floor.water = psi(0.45);
  const Stress design = steel().yield * 0.6;
  const WallCheck dry = check_walls({lid(22, 18, 0.1345)}, steel(), design, {}, psig(1.0));
  const WallCheck wet = check_walls({floor}, steel(), design, {}, psig(1.0));
  EXPECT_NEAR(in_psi(dry.limit) - in_psi(wet.limit), 0.45, 1.0e-9);
  EXPECT_EQ(wet.vacuum_limit, dry.vacuum_limit);  // no help is counted from water that may be gone
  EXPECT_GT(wet.panels.front().stress(), dry.panels.front().stress());
}

TEST(CheckWalls, LimitIsZeroWhenTheWaterAloneIsTooMuch) {
  Panel floor = lid(60, 60, 0.06);
  floor.water = psi(0.6);
  const WallCheck check = check_walls({floor}, steel(), steel().yield * 0.6, {}, psig(0.0));
  EXPECT_EQ(check.limit, psig(0.0));
  EXPECT_GT(check.vacuum_limit, psig(0.0));
}

TEST(CheckWalls, NamesTheWeakestPanelAndTheLeastFactor) {
  const WallCheck check = check_walls({lid(14, 18, 0.1345), lid(22, 18, 0.1345), lid(10, 10, 0.1345)}, steel(),
                                      steel().yield * 0.6, quantity::fact("share_of_yield", 0.6), psig(1.0));
  EXPECT_EQ(check.weakest, 1U);
  EXPECT_EQ(check.limit, check.panels[1].limit);
  EXPECT_EQ(check.factor_on_yield, check.panels[1].factor_on_yield);
  EXPECT_EQ(check.design_stress_basis, quantity::fact("share_of_yield", 0.6));
}

TEST(CheckWalls, LengthAndWidthMayBeGivenEitherWayRound) {
  const auto one = check_walls({lid(22, 18, 0.1345)}, steel(), steel().yield, {}, psig(1.0));
  const auto other = check_walls({lid(18, 22, 0.1345)}, steel(), steel().yield, {}, psig(1.0));
  EXPECT_EQ(one.limit, other.limit);
}

TEST(CheckWalls, BulgeOverHalfTheThicknessIsFlagged) {
  const WallCheck small = check_walls({lid(22, 18, 0.1345)}, steel(), steel().yield * 0.6, {}, psig(0.5));
  EXPECT_TRUE(small.panels.front().small_deflection);
  EXPECT_LT(small.panels.front().bulge(), inches(0.1345 / 2.0));
  EXPECT_FALSE(small.panels.front().small_deflection_at_limit);
  const WallCheck large = check_walls({lid(22, 18, 0.1345)}, steel(), steel().yield * 0.6, {}, psig(3.0));
  EXPECT_FALSE(large.panels.front().small_deflection);
}

TEST(CheckWalls, TheFlagTurnsWhereTheBulgeIsHalfTheThickness) {
  const Panel panel = lid(22, 18, 0.1345);
  const Length bulge = check_walls({panel}, steel(), steel().yield, {}, psig(1.0)).panels.front().bulge();
  const double turns_at =
      in_inches(panel.thickness) / 2.0 / in_inches(bulge);  // psi: the bulge grows with the pressure
  EXPECT_TRUE(check_walls({panel}, steel(), steel().yield, {}, psig(turns_at * 0.999)).panels.front().small_deflection);
  EXPECT_FALSE(
      check_walls({panel}, steel(), steel().yield, {}, psig(turns_at * 1.001)).panels.front().small_deflection);
}

TEST(CheckWalls, FactorWithoutLoadIsInfinite) {
  const WallCheck check = check_walls({lid(22, 18, 0.1345)}, steel(), steel().yield, {}, psig(0.0));
  EXPECT_EQ(check.factor_on_yield, std::numeric_limits<double>::infinity());
}

}  // namespace
}  // namespace riserun::reservoir
