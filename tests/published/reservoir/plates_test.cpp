// Plate coefficients against the tables of two handbooks, and whole plates against worked cases.
#include "reservoir/plates.h"

#include "reservoir/walls.h"

#include <gtest/gtest.h>

#include <vector>

namespace riserun::reservoir {
namespace {

constexpr double kInfinite = 1.0e4;
constexpr double kPoisson = 0.3;

// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., Table 35 (all edges built in), nu = 0.3, from
// memory. Printed to five decimals (bulge) and four (moments): half a unit of the last place, and one unit more
// because the book's own series was cut short. The centre moment at 1.1 is printed 0.0264; the exact value is 0.0267.
struct HeldRow {
  double ratio, alpha, long_edge, short_edge, short_span, long_span;
};
const std::vector<HeldRow> kTable35 = {
    {1.0, 0.00126, 0.0513, 0.0513, 0.0231, 0.0231}, {1.1, 0.0015, 0.0581, 0.0538, 0.0264, 0.0231},
    {1.2, 0.00172, 0.0639, 0.0554, 0.0299, 0.0228}, {1.3, 0.00191, 0.0687, 0.0563, 0.0327, 0.0222},
    {1.4, 0.00207, 0.0726, 0.0568, 0.0349, 0.0212}, {1.5, 0.0022, 0.0757, 0.057, 0.0368, 0.0203},
    {1.6, 0.0023, 0.078, 0.0571, 0.0381, 0.0193},   {1.7, 0.00238, 0.0799, 0.0571, 0.0392, 0.0182},
    {1.8, 0.00245, 0.0812, 0.0571, 0.0401, 0.0174}, {1.9, 0.00249, 0.0822, 0.0571, 0.0407, 0.0165},
    {2.0, 0.00254, 0.0829, 0.0571, 0.0412, 0.0158}, {kInfinite, 0.0026, 0.0833, 0.0571, 0.0417, 0.0125},
};

TEST(HeldPlate, AgreesWithTimoshenkoTable35) {
  for (const HeldRow& row : kTable35) {
    SCOPED_TRACE(row.ratio);
    const PlateCoefficients plate = held_plate(row.ratio, kPoisson);
    EXPECT_NEAR(plate.alpha_centre, row.alpha, 1.5e-5);
    EXPECT_NEAR(plate.beta_long_edge, row.long_edge, 1.5e-4);
    EXPECT_NEAR(plate.beta_short_edge, row.short_edge, row.ratio == kInfinite ? 2.5e-4 : 1.5e-4);
    EXPECT_NEAR(plate.beta_short_span_centre, row.short_span, row.ratio == 1.1 ? 3.5e-4 : 2.5e-4);
    EXPECT_NEAR(plate.beta_long_span_centre, row.long_span, 2.5e-4);
    EXPECT_NEAR(plate.beta_greatest(), plate.beta_long_edge, 1.0e-12);
  }
}

// The same book, Table 8 (all edges simply supported), nu = 0.3, from memory. The book's three-decimal steps at 1.1
// to 1.4 are up to 0.5 % low in the bulge, as a series summed by hand is.
struct FreeRow {
  double ratio, alpha, short_span, long_span;
};
const std::vector<FreeRow> kTable8 = {
    {1.0, 0.00406, 0.0479, 0.0479}, {1.1, 0.00485, 0.0554, 0.0493}, {1.2, 0.00564, 0.0627, 0.0501},
    {1.3, 0.00638, 0.0694, 0.0503}, {1.4, 0.00705, 0.0755, 0.0502}, {1.5, 0.00772, 0.0812, 0.0498},
    {1.6, 0.0083, 0.0862, 0.0492},  {1.7, 0.00883, 0.0908, 0.0486}, {1.8, 0.00931, 0.0948, 0.0479},
    {1.9, 0.00974, 0.0985, 0.0471}, {2.0, 0.01013, 0.1017, 0.0464}, {3.0, 0.01223, 0.1189, 0.0406},
    {4.0, 0.01282, 0.1235, 0.0384}, {5.0, 0.01297, 0.1246, 0.0375}, {kInfinite, 0.01302, 0.125, 0.0375},
};

TEST(FreePlate, AgreesWithTimoshenkoTable8) {
  for (const FreeRow& row : kTable8) {
    SCOPED_TRACE(row.ratio);
    const PlateCoefficients plate = free_plate(row.ratio, kPoisson);
    EXPECT_NEAR(plate.alpha_centre, row.alpha, 0.005 * row.alpha);
    EXPECT_NEAR(plate.beta_short_span_centre, row.short_span, 1.5e-4);
    EXPECT_NEAR(plate.beta_long_span_centre, row.long_span, 3.0e-4);
    EXPECT_NEAR(plate.beta_greatest(), plate.beta_short_span_centre, 1.0e-12);
  }
}

// The same book, article 30: the corner reaction R = 2 Mxy of a square plate is 0.065 q a^2, from memory (nu = 0.3),
// and 0.095 q a^2 of a long one.
TEST(FreePlate, TwistInTheCornerIsHalfTheCornerReaction) {
  EXPECT_NEAR(free_plate(1.0, kPoisson).beta_corner_twist, 0.065 / 2.0, 0.0005 / 2.0);
  EXPECT_NEAR(free_plate(kInfinite, kPoisson).beta_corner_twist, 0.095 / 2.0, 0.0005 / 2.0);
}

// With nu = 0 the corner of a square plate is stressed more than its middle.
TEST(FreePlate, CornerGovernsASquareOfLowPoissonRatio) {
  const PlateCoefficients plate = free_plate(1.0, 0.0);
  EXPECT_EQ(plate.beta_greatest(), plate.beta_corner_twist);
  EXPECT_GT(plate.beta_corner_twist, 1.2 * plate.beta_short_span_centre);
}

// Roark's Formulas for Stress and Strain, 7th ed., Table 11.4 case 1a (all edges simply supported), nu = 0.3:
// stress = beta q b^2 / t^2, bulge = alpha q b^4 / (E t^3), b the short side. Bulges are printed to three or four
// digits and up to 0.5 % off the exact series (0.0770 at 1.4 for 0.0774).
struct RoarkFreeRow {
  double ratio, beta, alpha;
};
const std::vector<RoarkFreeRow> kRoark1a = {
    {1.0, 0.2874, 0.0444}, {1.2, 0.3762, 0.0616}, {1.4, 0.453, 0.077}, {1.6, 0.5172, 0.0906}, {1.8, 0.5688, 0.1017},
    {2.0, 0.6102, 0.111},  {3.0, 0.7134, 0.1335}, {4.0, 0.741, 0.14},  {5.0, 0.7476, 0.1417}, {kInfinite, 0.75, 0.1421},
};

TEST(FreePlate, AgreesWithRoarkCase1a) {
  for (const RoarkFreeRow& row : kRoark1a) {
    SCOPED_TRACE(row.ratio);
    const PlateCoefficients plate = free_plate(row.ratio, kPoisson);
    EXPECT_NEAR(6.0 * plate.beta_greatest(), row.beta, 0.0015 * row.beta);
    EXPECT_NEAR(12.0 * (1.0 - kPoisson * kPoisson) * plate.alpha_centre, row.alpha, 0.005 * row.alpha);
  }
}

// The same, case 8a (all edges fixed), from memory: edge stress = beta1 q b^2 / t^2, centre stress = beta2 q b^2 / t^2.
struct RoarkHeldRow {
  double ratio, edge, centre, alpha;
};
const std::vector<RoarkHeldRow> kRoark8a = {
    {1.0, 0.3078, 0.1386, 0.0138},  {1.2, 0.3834, 0.1794, 0.0188}, {1.4, 0.4356, 0.2094, 0.0226},
    {1.6, 0.468, 0.2286, 0.0251},   {1.8, 0.4872, 0.2406, 0.0267}, {2.0, 0.4974, 0.2472, 0.0277},
    {kInfinite, 0.5, 0.25, 0.0284},
};

TEST(HeldPlate, AgreesWithRoarkCase8a) {
  for (const RoarkHeldRow& row : kRoark8a) {
    SCOPED_TRACE(row.ratio);
    const PlateCoefficients plate = held_plate(row.ratio, kPoisson);
    EXPECT_NEAR(6.0 * plate.beta_greatest(), row.edge, 0.002 * row.edge);
    EXPECT_NEAR(6.0 * plate.beta_short_span_centre, row.centre, 0.01 * row.centre);
    EXPECT_NEAR(12.0 * (1.0 - kPoisson * kPoisson) * plate.alpha_centre, row.alpha, 0.01 * row.alpha);
  }
}

// Worked cases: Timoshenko's formulas with coefficients by Ritz's method, E = 200 GPa, nu = 0.3. Five digits printed;
// the coefficients behind them are good to 0.1 %.
struct WorkedPlate {
  const char* name;
  double width_m, length_m, thickness_m, pressure_pa;
  bool held;
  double stress_mpa, bulge_mm;
};
const std::vector<WorkedPlate> kWorked = {
    {"held 400 x 600 x 5 mm at 10 kPa", 0.4, 0.6, 0.005, 10000.0, true, 29.053, 0.24562},
    {"free 300 x 300 x 4 mm at 7 kPa", 0.3, 0.3, 0.004, 7000.0, false, 11.313, 0.1965},
    {"held 600 x 1200 x 6 mm at 35 kPa", 0.6, 1.2, 0.006, 35000.0, true, 174.02, 2.9043},
};

TEST(CheckWalls, AgreesWithWorkedPlates) {
  SheetMetal steel = *find_sheet_metal("mild steel");
  steel.elastic_modulus = megapascals(200000.0);
  steel.poisson_ratio = kPoisson;
  for (const WorkedPlate& worked : kWorked) {
    SCOPED_TRACE(worked.name);
    const Panel panel{"panel", metres(worked.length_m), metres(worked.width_m), metres(worked.thickness_m), {}};
    const WallCheck check = check_walls({panel}, steel, steel.yield, {}, gauge_pascals(worked.pressure_pa));
    const PanelResult& result = check.panels.front();
    const Stress stress = worked.held ? result.stress_held : result.stress_free;
    const Length bulge = worked.held ? result.bulge_held : result.bulge_free;
    EXPECT_NEAR(in_pascals(stress) / 1.0e6, worked.stress_mpa, 0.001 * worked.stress_mpa);
    EXPECT_NEAR(in_millimetres(bulge), worked.bulge_mm, 0.001 * worked.bulge_mm);
  }
}

// National Board inspection code supplement on stayed surfaces (from memory): p = t^2 S C / pitch^2, C = 2.1. A plate
// on lines of support, square and held, stands more than one on single stays of the same pitch.
TEST(StayedPlate, CodeFormIsBelowTheHeldPlate) {
  const PressureDifference stayed = stayed_plate_limit(inches(0.1345), inches(12.0), megapascals(150.0));
  EXPECT_NEAR(in_pascals(stayed), 0.1345 * 0.1345 * 150.0e6 * 2.1 / 144.0, 1.0);
  const double held = 150.0e6 / (6.0 * held_plate(1.0, kPoisson).beta_greatest()) * 0.1345 * 0.1345 / 144.0;
  EXPECT_LT(in_pascals(stayed), held);
}

}  // namespace
}  // namespace riserun::reservoir
