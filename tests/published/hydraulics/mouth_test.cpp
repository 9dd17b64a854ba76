// Mouths of pipes in shallow water, against worked tables; the sources stand at the formulas.
#include "hydraulics/mouth.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

double litres_per_minute_over(double bore_m, double depth_mm) {
  return in_litres_per_minute(flow_over_rim(metres(bore_m), millimetres(depth_mm)));
}

// Worked with an exact 1.7046 for schedule 40 bores beside this program, L/min.
TEST(Rim, PassesWhatTheWorkedTableSays) {
  EXPECT_NEAR(litres_per_minute_over(0.0266446, 3.175), 1.53, 0.006);
  EXPECT_NEAR(litres_per_minute_over(0.0266446, 25.4), 34.66, 0.02);
  EXPECT_NEAR(litres_per_minute_over(0.040894, 10.0), 13.14, 0.01);
  EXPECT_NEAR(litres_per_minute_over(0.0525018, 12.7), 24.15, 0.02);
  EXPECT_NEAR(litres_per_minute_over(0.077927, 5.0), 8.85, 0.01);
  EXPECT_EQ(litres_per_minute_over(0.0525018, -1.0), 0.0);
}

// (2/3)^1.5 sqrt(g); 0.35 sqrt(2 g); 3.27 ft^0.5/s.
TEST(Rim, HasTheCoefficientsOfTheirSources) {
  EXPECT_NEAR(kBroadCrest, std::pow(2.0 / 3.0, 1.5) * std::sqrt(9.80665), 5e-5);
  EXPECT_NEAR(kBroadCrestInUse, 0.35 * std::sqrt(2.0 * 9.80665), 1e-3);
  EXPECT_NEAR(kSharpCrest, 3.27 * std::sqrt(0.3048), 1e-3);
}

// A 1.62 m2, D 40.894 mm: 25.4 to 3.175 mm in 169.7 s, to 1 mm in 374.9 s, with C rounded to 1.705.
TEST(Rim, TakesTheWorkedTimes) {
  const Area area = square_metres(1.62);
  EXPECT_NEAR(in_seconds(time_over_rim(area, metres(0.040894), millimetres(25.4), millimetres(3.175))), 169.7, 0.1);
  EXPECT_NEAR(in_seconds(time_over_rim(area, metres(0.040894), millimetres(25.4), millimetres(1.0))), 374.9, 0.2);
}

VolumeFlow at_velocity(double bore_m, double velocity) {
  return cubic_metres_per_second(velocity * std::numbers::pi / 4.0 * bore_m * bore_m);
}

// Worked for schedule 40 bores beside this program, mm.
TEST(Submergence, BothFiguresOfTheWorkedTable) {
  EXPECT_NEAR(in_millimetres(intake_submergence(metres(0.0266446), at_velocity(0.0266446, 1.0))), 146.5, 0.1);
  EXPECT_NEAR(in_millimetres(dip_depth(at_velocity(0.0266446, 1.0))), 21.8, 0.1);
  EXPECT_NEAR(in_millimetres(intake_submergence(metres(0.040894), at_velocity(0.040894, 2.0))), 337.9, 0.1);
  EXPECT_NEAR(in_millimetres(dip_depth(at_velocity(0.040894, 2.0))), 40.6, 0.1);
  EXPECT_NEAR(in_millimetres(intake_submergence(metres(0.0525018), at_velocity(0.0525018, 0.5))), 136.6, 0.1);
  EXPECT_NEAR(in_millimetres(dip_depth(at_velocity(0.0525018, 0.5))), 28.5, 0.1);
}

// S[in] = D + 0.574 Q[gpm] / D^1.5: the same rule as it is printed in US units.
TEST(Submergence, AgreesWithItsFormInUsUnits) {
  const double bore = 2.067;
  const double gpm = 30.0;
  const double inch = in_inches(intake_submergence(inches(bore), us_gallons_per_minute(gpm)));
  EXPECT_NEAR(inch, bore + 0.574 * gpm / std::pow(bore, 1.5), 0.01);
}

// v^2 / 2g, and by the table of upright pipes 1/k^2 of it, k 0.87.
TEST(Jet, RisesAsHighAsTheWorkedTable) {
  EXPECT_NEAR(in_millimetres(jet_height(metres_per_second(1.5))), 114.7, 0.1);
  EXPECT_NEAR(kJetMost * in_millimetres(jet_height(metres_per_second(1.5))), 151.6, 0.3);
  EXPECT_NEAR(in_millimetres(jet_height(metres_per_second(3.0))), 458.9, 0.1);
}

TEST(Film, IsWhatItsContactAngleHolds) {
  const Density water = kilograms_per_cubic_metre(998.2);
  EXPECT_NEAR(in_millimetres(film_left(20.0, water)), 0.95, 0.01);
  EXPECT_NEAR(in_millimetres(film_left(60.0, water)), 2.73, 0.01);
  EXPECT_NEAR(in_millimetres(film_left(90.0, water)), 3.86, 0.01);
}

}  // namespace
}  // namespace riserun::hydraulics
