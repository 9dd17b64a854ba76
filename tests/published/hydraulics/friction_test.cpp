// Friction factors and the heads and pressures lost in straight pipe, against published tables and worked examples.
#include "hydraulics/friction.h"

#include "hydraulics/line.h"

#include <gtest/gtest.h>

#include <string>

namespace riserun::hydraulics {
namespace {

Water water_of(double density, double kinematic_viscosity) {  // kg/m^3, m^2/s
  return {kilograms_per_cubic_metre(density), pascal_seconds(density * kinematic_viscosity), AbsolutePressure()};
}

/// 100 ft (or any length) of pipe between ends that cost nothing.
Line pipe(Length bore, Length length, Length roughness) {
  LineElement element;
  element.name = "pipe";
  element.bore = bore;
  element.length = length;
  element.roughness = roughness;
  return Line({element}, {0.0, 0.0, 0.0, ""}, {0.0, 0.0, 0.0, ""});
}

double head_feet(const Line& line, VolumeFlow flow, const Water& water) {
  return in_feet(line.head_loss(flow, Direction::forward, water));
}

double velocity_of(const Line& line, VolumeFlow flow, const Water& water) {
  return in_feet_per_second(line.losses(flow, Direction::forward, water)[1].velocity);
}

// Moody chart: 64/Re and Colebrook-White, five digits.
TEST(FrictionFactor, MeetsTheMoodyChart) {
  constexpr double kRows[][3] = {{1000, 0.001, 0.064},
                                 {4000, 0, 0.039907},
                                 {1.0e5, 0.001, 0.022175},
                                 {1.0e6, 0.0001, 0.013441},
                                 {1.0e4, 0.01, 0.043127}};
  for (const auto& [reynolds, roughness, factor] : kRows) {
    EXPECT_NEAR(darcy_friction_factor(reynolds, roughness), factor, 0.51e-6) << reynolds;
  }
}

// fT of clean commercial steel pipe, schedule 40 bores (ASME B36.10M), as printed to three decimals in Crane TP-410
// (2009), Appendix A. NPS 5 is left out: the formula gives 0.0155, on the edge between the editions' 0.015 and 0.016.
struct CraneRow {
  const char* nps;
  double bore_inches, factor;
};
TEST(CraneFrictionFactor, RoundsToThePrintedColumn) {
  constexpr CraneRow kRows[] = {{"1/2", 0.622, 0.026},   {"3/4", 0.824, 0.024},  {"1", 1.049, 0.022},
                                {"1-1/4", 1.38, 0.021},  {"1-1/2", 1.61, 0.020}, {"2", 2.067, 0.019},
                                {"2-1/2", 2.469, 0.018}, {"3", 3.068, 0.017},    {"4", 4.026, 0.016},
                                {"6", 6.065, 0.015}};
  for (const CraneRow& row : kRows) {
    EXPECT_NEAR(crane_turbulent_friction_factor(inches(row.bore_inches)), row.factor, 0.0005) << row.nps;
  }
}

// Water at 60 degF in schedule 40 steel, psi per 100 ft and ft/s: Crane TP-410, Appendix B, "Flow of water through
// schedule 40 steel pipe"; three digits of a table that was drawn up with a rounded factor: 2 %.
struct CraneWaterRow {
  double bore_inches, gallons_per_minute, psi, feet_per_second;
};
TEST(StraightPipe, MeetsCranesWaterTable) {
  constexpr CraneWaterRow kRows[] = {{1.049, 5, 0.84, 1.86},
                                     {2.067, 20, 0.375, 1.91},
                                     {2.067, 50, 2.03, 4.78},
                                     {3.068, 50, 0.288, 2.17},
                                     {4.026, 100, 0.272, 2.52}};
  const Water water = *water_at(degrees_fahrenheit(60.0));
  for (const CraneWaterRow& row : kRows) {
    const Line line = pipe(inches(row.bore_inches), feet(100.0), inches(0.0018));
    const VolumeFlow flow = us_gallons_per_minute(row.gallons_per_minute);
    const double psi_lost = in_psi(pressure_of(line.head_loss(flow, Direction::forward, water), water.density));
    EXPECT_NEAR(psi_lost, row.psi, 0.02 * row.psi) << row.bore_inches;
    EXPECT_NEAR(velocity_of(line, flow, water), row.feet_per_second, 0.02 * row.feet_per_second) << row.bore_inches;
  }
}

// Hydraulic Institute Engineering Data Book: 1 in schedule 40, 10 gpm of 60 degF water, 6.86 ft per 100 ft.
TEST(StraightPipe, MeetsTheHydraulicInstitutesTable) {
  const Line line = pipe(inches(1.049), feet(100.0), feet(0.00015));
  const double head = head_feet(line, us_gallons_per_minute(10.0), *water_at(degrees_fahrenheit(60.0)));
  EXPECT_NEAR(head, 6.86, 0.02 * 6.86);
}

// Darcy-Weisbach with Colebrook, nu = 1.2217e-5 ft^2/s, roughness 0.00015 ft, five digits.
TEST(StraightPipe, MeetsDarcyWeisbachWorkedByHand) {
  const Water water = water_of(999.0, 1.2217e-5 * quantity::kMetresPerFoot * quantity::kMetresPerFoot);
  const Line half = pipe(inches(0.622), feet(100.0), feet(0.00015));
  EXPECT_NEAR(head_feet(half, us_gallons_per_minute(2.0), water), 4.7774, 0.001 * 4.7774);
  const Line three_quarter = pipe(inches(0.824), feet(100.0), feet(0.00015));
  EXPECT_NEAR(head_feet(three_quarter, us_gallons_per_minute(8.0), water), 15.119, 0.001 * 15.119);
}

// A public Darcy-Weisbach table for schedule 40 pipe (20 degC, rho 998.3, nu 1.004e-6, roughness 4.5e-5 m), Pa per
// 100 m. It was made with a friction factor of its own: 3 to 5 % above Colebrook-White here.
TEST(StraightPipe, MeetsAPublicDarcyTable) {
  constexpr double kRows[][3] = {{0.0158, 0.05, 9040}, {0.0158, 0.1, 31228}, {0.0125, 0.08, 66183}};  // m, L/s, Pa
  const Water water = water_of(998.3, 1.004e-6);
  for (const auto& [bore, litres_per_second, pascals_lost] : kRows) {
    const Line line = pipe(metres(bore), metres(100.0), metres(4.5e-5));
    const Head head = line.head_loss(litres_per_minute(60.0 * litres_per_second), Direction::forward, water);
    EXPECT_NEAR(in_pascals(pressure_of(head, water.density)), pascals_lost, 0.06 * pascals_lost) << bore;
  }
}

// Trade tables by Hazen-Williams with C = 100 (old steel), ft per 100 ft and ft/s, schedule 40. Another law than ours:
// they must lie between clean steel (0.0018 in) and a corroded water pipe (1.5 mm, Idelchik), and the velocities agree.
TEST(StraightPipe, TradeTablesForOldPipeLieBetweenCleanAndCorroded) {
  constexpr double kRows[][4] = {{0.622, 2, 7.6, 2.11},
                                 {0.824, 4, 6.9, 2.41},
                                 {1.38, 16, 7.3, 3.43},
                                 {1.049, 10, 11.63, 3.71},
                                 {1.049, 20, 41.99, 7.42}};
  const Water water = *water_at(degrees_fahrenheit(60.0));
  for (const auto& [bore, gallons_per_minute, feet_lost, feet_per_second] : kRows) {
    const VolumeFlow flow = us_gallons_per_minute(gallons_per_minute);
    const Line clean = pipe(inches(bore), feet(100.0), inches(0.0018));
    const Line corroded = pipe(inches(bore), feet(100.0), millimetres(1.5));
    EXPECT_LT(head_feet(clean, flow, water), feet_lost) << bore;
    EXPECT_GT(head_feet(corroded, flow, water), feet_lost) << bore;
    EXPECT_NEAR(velocity_of(clean, flow, water), feet_per_second, 0.015 * feet_per_second) << bore;
  }
}

// Hagen-Poiseuille: dp = 128 mu L Q / (pi D^4).
TEST(StraightPipe, LaminarFlowIsHagenPoiseuilles) {
  const Water water = *water_at(degrees_celsius(20.0));
  const Line line = pipe(metres(0.01), metres(2.0), metres(1.0e-4));
  const double flow = 1.0e-6;  // m^3/s, Re 127
  const double expected = 128.0 * in_pascal_seconds(water.viscosity) * 2.0 * flow / (3.14159265358979 * 1.0e-8);
  const Head head = line.head_loss(cubic_metres_per_second(flow), Direction::forward, water);
  EXPECT_NEAR(in_pascals(pressure_of(head, water.density)), expected, 1.0e-12 * expected);
}

}  // namespace
}  // namespace riserun::hydraulics
