// What must hold of plates, panels and supports whatever their measures.
#include "reservoir/box_panels.h"
#include "reservoir/plates.h"
#include "reservoir/stored_energy.h"
#include "reservoir/support_loads.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace riserun::reservoir {
namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }

 private:
  std::mt19937 engine_;
};

TEST(Plates, HeldBulgesAndBendsLessInTheMiddleThanFree) {
  Dice dice(1);
  for (int i = 0; i < 300; ++i) {
    const double ratio = std::exp(dice.between(0.0, std::log(20.0)));
    const double nu = dice.between(0.0, 0.5);
    const PlateCoefficients held = held_plate(ratio, nu);
    const PlateCoefficients free = free_plate(ratio, nu);
    EXPECT_LT(held.alpha_centre, 0.4 * free.alpha_centre) << ratio;
    EXPECT_LT(held.beta_short_span_centre, free.beta_short_span_centre) << ratio << ' ' << nu;
    EXPECT_GT(held.alpha_centre, 0.19 * free.alpha_centre) << ratio;
  }
}

// Bulge grows with the long side to the strip's, within the held plate's true overshoot of about half a percent.
TEST(Plates, BulgeGrowsWithTheLongSideUpToTheStrip) {
  double last_free = 0.0;
  double last_held = 0.0;
  for (double ratio = 1.0; ratio < 12.0; ratio *= 1.01) {
    const double free = free_plate(ratio, 0.3).alpha_centre;
    const double held = held_plate(ratio, 0.3).alpha_centre;
    EXPECT_GE(free, last_free) << ratio;
    EXPECT_GE(held, last_held * 0.9995) << ratio;
    EXPECT_LE(free, 5.0 / 384.0 * (1 + 1e-12));
    EXPECT_LE(held, 1.0 / 384.0 * 1.006);
    last_free = free;
    last_held = held;
  }
}

// Closed forms of a strip: 5/384, 1/8 free; 1/384, 1/12 and 1/24 held; Poisson's share along it.
TEST(Plates, LongPlatesReachTheStrip) {
  Dice dice(2);
  for (int i = 0; i < 50; ++i) {
    const double nu = dice.between(0.0, 0.5);
    const double ratio = std::exp(dice.between(std::log(8.0), std::log(1.0e6)));
    const PlateCoefficients held = held_plate(ratio, nu);
    EXPECT_NEAR(held.alpha_centre, 1.0 / 384.0, 1e-10);
    EXPECT_NEAR(held.beta_long_edge, 1.0 / 12.0, 1e-7);
    EXPECT_NEAR(held.beta_short_span_centre, 1.0 / 24.0, 1e-8);
    EXPECT_NEAR(held.beta_long_span_centre, nu / 24.0, 1e-7);
    const PlateCoefficients free = free_plate(ratio, nu);
    EXPECT_NEAR(free.alpha_centre, 5.0 / 384.0, 1e-6);
    EXPECT_NEAR(free.beta_short_span_centre, 0.125, 1e-5);
    EXPECT_NEAR(free.beta_long_span_centre, nu / 8.0, 1e-5);
  }
}

// The sum of the two middle moments of a plate does not know its directions: a square's are equal.
TEST(Plates, ASquareBendsTheSameBothWays) {
  for (double nu = 0.0; nu <= 0.5; nu += 0.05) {
    const PlateCoefficients held = held_plate(1.0, nu);
    EXPECT_NEAR(held.beta_short_span_centre, held.beta_long_span_centre, 1e-9);
    EXPECT_NEAR(held.beta_long_edge, held.beta_short_edge, 1e-9);
    const PlateCoefficients free = free_plate(1.0, nu);
    EXPECT_NEAR(free.beta_short_span_centre, free.beta_long_span_centre, 1e-12);
  }
}

// Edge moments and the bulge of a held plate do not depend on Poisson's ratio (the plate equation does not).
TEST(Plates, EdgeMomentsDoNotDependOnPoissonsRatio) {
  for (double ratio = 1.0; ratio < 9.0; ratio += 0.7) {
    EXPECT_EQ(held_plate(ratio, 0.0).beta_long_edge, held_plate(ratio, 0.45).beta_long_edge);
    EXPECT_NEAR(held_plate(ratio, 0.0).alpha_centre, held_plate(ratio, 0.45).alpha_centre, 1e-15);
  }
}

TEST(Plates, NothingJumpsWhereTheSeriesTakesOnATerm) {
  for (double ratio = 1.0; ratio < 9.0; ratio += 0.0093) {
    const PlateCoefficients a = held_plate(ratio, 0.3);
    const PlateCoefficients b = held_plate(ratio + 1.0e-6, 0.3);
    ASSERT_NEAR(a.beta_long_edge, b.beta_long_edge, 2.0e-6) << ratio;
    ASSERT_NEAR(a.alpha_centre, b.alpha_centre, 1.0e-8) << ratio;
  }
}

SheetMetal any_metal(Dice& dice) {
  const auto& metals = sheet_metals();
  return metals[static_cast<std::size_t>(dice.whole(0, static_cast<int>(metals.size()) - 1))];
}

GaugePressure limit(const Panel& panel, const SheetMetal& metal) {
  return check_walls({panel}, metal, design_stress(metal).stress, {}, psig(1.0)).limit;
}

TEST(PanelLimit, FallsWithTheSpanAndRisesWithTheSquareOfTheThickness) {
  Dice dice(3);
  for (int i = 0; i < 200; ++i) {
    const SheetMetal metal = any_metal(dice);
    const Panel panel{
        "p", inches(dice.between(6, 60)), inches(dice.between(6, 60)), inches(dice.between(0.05, 0.4)), {}};
    Panel longer = panel;
    longer.length = panel.length * 1.2;
    Panel wider = panel;
    wider.width = panel.width * 1.2;
    Panel thicker = panel;
    thicker.thickness = panel.thickness * 2.0;
    // A long panel's held edge overshoots the strip by half a percent, but free edges govern it.
    EXPECT_LE(in_pascals(limit(longer, metal)), in_pascals(limit(panel, metal)) * (1 + 1e-12));
    EXPECT_LE(in_pascals(limit(wider, metal)), in_pascals(limit(panel, metal)) * (1 + 1e-12));
    EXPECT_NEAR(in_pascals(limit(thicker, metal)) / in_pascals(limit(panel, metal)), 4.0, 1e-9);
  }
}

TEST(PanelLimit, StressIsLinearInAirPlusWater) {
  Dice dice(4);
  for (int i = 0; i < 100; ++i) {
    const SheetMetal metal = any_metal(dice);
    Panel panel{"p", inches(dice.between(6, 60)), inches(dice.between(6, 60)), inches(dice.between(0.05, 0.4)), {}};
    panel.water = psi(dice.between(0.0, 0.6));
    const double air = dice.between(0.2, 5.0);
    const WallCheck wet = check_walls({panel}, metal, metal.yield, {}, psig(air));
    Panel dry = panel;
    dry.water = {};
    const WallCheck same = check_walls({dry}, metal, metal.yield, {}, psig(air + in_psi(panel.water)));
    EXPECT_NEAR(wet.panels[0].stress() / same.panels[0].stress(), 1.0, 1e-12);
    EXPECT_NEAR(in_psi(wet.panels[0].vacuum_limit) - in_psi(wet.panels[0].limit), in_psi(panel.water),
                in_psi(wet.panels[0].limit) > 0 ? 1e-9 : 10.0);
  }
}

TEST(NextSupports, NoneMakesABoxWeaker) {
  Dice dice(5);
  for (int i = 0; i < 60; ++i) {
    WallRequest r;
    r.box = {inches(dice.between(24, 100)), inches(dice.between(12, 48)), inches(dice.between(8, 24))};
    r.thickness = inches(dice.between(0.06, 0.25));
    r.supports.baffles_across = dice.whole(0, 3);
    r.supports.baffles_along = dice.whole(0, 1);
    if (dice.whole(0, 2) == 0) r.supports.lid = WallBays{dice.whole(1, 5), dice.whole(1, 3)};
    r.supports.lid_stays_are_posts = dice.whole(0, 1) == 1;
    r.supports.floor_carried = dice.whole(0, 1) == 1;
    r.water_depth = r.box.height * dice.between(0.0, 0.95);
    r.water = kilograms_per_cubic_metre(998.2);
    r.metal = any_metal(dice);
    r.design_stress = design_stress(r.metal).stress;
    const GaugePressure now = wall_limit(r);
    for (const NextSupport& next : next_supports(r)) {
      // A row of posts may break a lid that rows held before: then the rule for posts comes in.
      if (r.supports.lid_stays_are_posts) continue;
      EXPECT_GE(in_pascals(next.limit), in_pascals(now) * (1 - 1e-12)) << next.what;
    }
  }
}

TEST(SupportLoads, SupportsAndTheOuterWeldCarryTheWholeLid) {
  Dice dice(6);
  for (int i = 0; i < 100; ++i) {
    const Box box{inches(dice.between(24, 100)), inches(dice.between(12, 48)), inches(12)};
    SupportLayout supports;
    supports.baffles_across = dice.whole(0, 5);
    const GaugePressure p = psig(dice.between(0.2, 3.0));
    const SupportLoads loads = support_loads(box, supports, p);
    const double rows = loads.rows_across * in_newtons(loads.each_row_across);
    const double whole = in_newtons(loads.lid);
    EXPECT_NEAR(rows + whole / (loads.rows_across + 1), whole,
                1e-9 * whole);  // the two end half-bays lean on the walls
  }
}

TEST(StoredEnergy, GrowsWithPressureAndInProportionToTheVolume) {
  Dice dice(7);
  const AbsolutePressure atmosphere = absolute_pascals(101325.0);
  for (int i = 0; i < 200; ++i) {
    const double p = dice.between(0.1, 100.0);
    const Volume v = us_gallons(dice.between(5.0, 500.0));
    const double energy = in_joules(stored_energy(psig(p), v, atmosphere).energy);
    EXPECT_LT(energy, in_joules(stored_energy(psig(p * 1.01), v, atmosphere).energy));
    EXPECT_NEAR(in_joules(stored_energy(psig(p), 2.0 * v, atmosphere).energy) / energy, 2.0, 1e-12);
    EXPECT_LT(energy, p * quantity::kPascalsPerPsi * in_cubic_metres(v) * 2.5);  // Brode's upper bound: p V / (k - 1)
  }
}

}  // namespace
}  // namespace riserun::reservoir
