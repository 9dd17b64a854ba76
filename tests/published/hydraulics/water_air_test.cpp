// Water, air and the standard atmosphere against published tables.
#include "hydraulics/air.h"
#include "hydraulics/fluid.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace riserun::hydraulics {
namespace {

// Water at 101325 Pa: IAPWS R7-97(2012) (density, saturation pressure) and IAPWS R12-08 (viscosity), as the Python
// library iapws 1.5.2 gives them. The formulation of the program (SR6-08) and R7-97 are each fitted to IAPWS-95, in
// density to 1e-6 and 2e-5: the latter is the tolerance. R12-08 and SR6-08 agree on viscosity to 2e-4.
struct WaterRow {
  int celsius;
  double density, viscosity, vapour_pressure;  // kg/m^3, Pa s, Pa
};
constexpr WaterRow kWater[] = {
    {0, 999.8443, 0.00179175, 611.213},   {5, 999.9669, 0.00151817, 872.575},   {10, 999.7015, 0.0013059, 1228.18},
    {15, 999.1011, 0.00113757, 1705.74},  {20, 998.2061, 0.0010016, 2339.21},   {25, 997.048, 0.000890022, 3169.75},
    {30, 995.6521, 0.000797222, 4246.69}, {35, 994.0385, 0.000719126, 5628.62}, {40, 992.2243, 0.000652731, 7384.43},
    {45, 990.2233, 0.000595773, 9594.39}, {50, 988.0475, 0.000546522, 12351.3}, {55, 985.707, 0.000503632, 15761.4},
    {60, 983.2106, 0.000466043, 19945.8}, {65, 980.5659, 0.000432912, 25041.1}, {70, 977.7793, 0.000403557, 31200.6},
    {75, 974.8567, 0.000377424, 38595.4}, {80, 971.8029, 0.000354058, 47414.7},
};

class WaterTable : public testing::TestWithParam<WaterRow> {};

TEST_P(WaterTable, IsMet) {
  const WaterRow row = GetParam();
  const auto water = water_at(degrees_celsius(row.celsius));
  ASSERT_TRUE(water.has_value());
  EXPECT_NEAR(in_kilograms_per_cubic_metre(water->density), row.density, 2.0e-5 * row.density);
  EXPECT_NEAR(in_pascal_seconds(water->viscosity), row.viscosity, 2.0e-4 * row.viscosity);
  EXPECT_NEAR(in_pascals(water->vapour_pressure), row.vapour_pressure, 5.0e-6 * row.vapour_pressure);
}
INSTANTIATE_TEST_SUITE_P(IapwsR797, WaterTable, testing::ValuesIn(kWater),
                         [](const auto& row) { return "At" + std::to_string(row.param.celsius) + "C"; });

// IAPWS R7-97(2012), table 35: the release's own check of equation 30, nine digits.
TEST(WaterVapourPressure, MeetsTheCheckValueOfItsRelease) {
  const auto water = water_at(kelvins(300.0));
  ASSERT_TRUE(water.has_value());
  EXPECT_NEAR(in_pascals(water->vapour_pressure), 3536.58941, 5.0e-6);
}

// Ideal gas with R = 287.05287 J/(kg K) at 101325 Pa and Sutherland's law, U.S. Standard Atmosphere 1976; six and five
// digits.
struct AirRow {
  int celsius;
  double density, viscosity;  // kg/m^3, Pa s
};
constexpr AirRow kAir[] = {
    {-20, 1.39437, 1.6153e-05}, {-10, 1.34138, 1.6661e-05}, {0, 1.29227, 1.7161e-05},  {10, 1.24663, 1.7652e-05},
    {15, 1.225, 1.7894e-05},    {20, 1.20411, 1.8134e-05},  {25, 1.18391, 1.8372e-05}, {30, 1.16439, 1.8609e-05},
    {40, 1.1272, 1.9076e-05},   {50, 1.09232, 1.9536e-05},  {60, 1.05953, 1.9988e-05}, {80, 0.999529, 2.0874e-05},
};

TEST(Air, MeetsTheStandardAtmospheresTable) {
  for (const AirRow& row : kAir) {
    const Temperature temperature = degrees_celsius(row.celsius);
    EXPECT_NEAR(in_kilograms_per_cubic_metre(air_density(absolute_pascals(101325.0), temperature)), row.density, 6.0e-6)
        << row.celsius;
    EXPECT_NEAR(in_pascal_seconds(air_viscosity(temperature)), row.viscosity, 0.51e-9) << row.celsius;
  }
}

// ISO 2533 / U.S. Standard Atmosphere 1976, p = 101325 (1 - 2.25577e-5 h)^5.25588: six digits of a rounded formula.
TEST(Atmosphere, MeetsTheStandardByAltitude) {
  constexpr double kRows[][2] = {{0, 101325.0},   {250, 98357.5},  {500, 95460.8},  {1000, 89874.6},
                                 {1500, 84556.0}, {2000, 79495.2}, {2500, 74682.5}, {3000, 70108.5}};
  for (const auto& [altitude, pressure] : kRows) {
    const auto atmosphere = atmosphere_at(metres(altitude));
    ASSERT_TRUE(atmosphere.has_value());
    EXPECT_NEAR(in_pascals(*atmosphere), pressure, 1.0e-5 * pressure) << altitude;
  }
}

// Isentropic flow of a gas with ratio 1.4: critical ratio 0.5282817877.
TEST(AirThroughAnOpening, ChokesAtTheCriticalRatio) { EXPECT_NEAR(critical_pressure_ratio(), 0.5282817877, 5.0e-11); }

// Isentropic choked flow, gamma 1.4, R 287.05: 6 mm hole, Cd 0.8, 300 kPa absolute at 293.15 K.
TEST(AirThroughAnOpening, ChokedFlowOfASixMillimetreHole) {
  const Temperature temperature = kelvins(293.15);
  const MassFlow flow = orifice_air_flow(effective_area(millimetres(6.0), 0.8), absolute_pascals(300000.0),
                                         absolute_pascals(101325.0), temperature);
  EXPECT_NEAR(in_kilograms_per_second(flow), 0.016018, 0.003 * 0.016018);
  const VolumeFlow free_air = free_air_of_mass_flow(flow, absolute_pascals(101325.0), temperature);
  EXPECT_NEAR(in_litres_per_minute(free_air) / 60.0, 13.303, 0.003 * 13.303);
}

// The same in the short form m = 0.040415 Cd A p0 / sqrt(T0), SI, five digits.
TEST(AirThroughAnOpening, ChokedConstantOfAir) {
  const double flow = orifice_air_flow(1.0, 300000.0, 101325.0, 293.15, 293.15);
  EXPECT_NEAR(flow * std::sqrt(293.15) / 300000.0, 0.040415, 1.0e-6);
}

// Isentropic subsonic orifice: 1/8 in schedule 40 bore, Cd 0.8, 35 kPa gauge.
TEST(AirThroughAnOpening, SubsonicVent) {
  const double flow =
      orifice_air_flow(in_square_metres(effective_area(metres(0.0068326), 0.8)), 136325.0, 101325.0, 293.15, 293.15);
  EXPECT_NEAR(flow, 0.0084121, 0.003 * 0.0084121);
}

// From a tutorial on choked flow: air at 80 psig stays choked up to 35.3 psig downstream (atmosphere 14.7 psia).
TEST(AirThroughAnOpening, StaysChokedUpTo35PsigFrom80Psig) {
  const double limit = (80.0 + 14.7) * critical_pressure_ratio() - 14.7;
  EXPECT_NEAR(limit, 35.3, 0.002 * 35.3);
  const auto flow_to = [](double psig_after) {
    return orifice_air_flow(1.0e-5, 94.7 * quantity::kPascalsPerPsi, (psig_after + 14.7) * quantity::kPascalsPerPsi,
                            293.15, 293.15);
  };
  EXPECT_EQ(flow_to(35.2), flow_to(0.0));
  EXPECT_LT(flow_to(36.5), flow_to(0.0));
}

// Tank at 101.325 kPa outside: choked above 90.5 kPa gauge (13.1 psig).
TEST(AirThroughAnOpening, ATankVentChokesAbove13Psig) {
  EXPECT_NEAR(101325.0 / critical_pressure_ratio() - 101325.0, 90.5e3, 50.0);
}

// For a pressure difference below 2 % the flow is Cd A sqrt(2 rho dp) within 1 % (expansion: 1 - 3/(4 gamma) x).
TEST(AirThroughAnOpening, SmallDifferencesFollowTheIncompressibleLaw) {
  for (const double share : {1.0e-4, 1.0e-3, 0.01, 0.019}) {
    const double upstream = 110000.0;
    const double density = upstream / (kAirGasConstant * 293.15);
    const double incompressible = 2.0e-5 * std::sqrt(2.0 * density * share * upstream);
    EXPECT_NEAR(orifice_air_flow(2.0e-5, upstream, upstream * (1.0 - share), 293.15, 293.15), incompressible,
                0.011 * incompressible);
  }
}

// Isothermal blow-down of 0.5 m^3 through a choked 0.3 mm leak, Cd 0.61: p falls as exp(-k t), k = 1.7129e-5 1/s;
// 400 to 390 kPa absolute in 1478.1 s.
TEST(AirThroughAnOpening, BlowDownThroughALeak) {
  const double area = in_square_metres(effective_area(millimetres(0.3), 0.61));
  const double decay =
      orifice_air_flow(area, 4.0e5, 101325.0, 293.15, 293.15) * kAirGasConstant * 293.15 / (4.0e5 * 0.5);
  EXPECT_NEAR(decay, 1.7129e-5, 0.003 * 1.7129e-5);
  EXPECT_NEAR(std::log(400.0 / 390.0) / decay, 1478.1, 0.003 * 1478.1);
}

// Worked with IAPWS-IF97 saturation pressures beside this program: shut at the first temperature, at 101.325 kPa, psi.
TEST(MoistAir, PullsTheWorkedVacuumWhenItCools) {
  struct Row {
    double warm, cold, psi;
  };
  const AbsolutePressure sea_level = absolute_pascals(101325.0);
  for (const Row& row :
       {Row{30, 20, 0.741}, Row{30, 10, 1.367}, Row{40, 20, 1.602}, Row{40, 5, 2.467}, Row{50, 20, 2.65},
        Row{60, 40, 2.53}, Row{60, 20, 3.971}, Row{60, 5, 4.715}, Row{80, 60, 4.427}, Row{80, 20, 7.866}})
    EXPECT_NEAR(in_psi(vacuum_of_cooling(degrees_celsius(row.warm), degrees_celsius(row.cold), sea_level)), row.psi,
                0.0015)
        << row.warm << " to " << row.cold;
  EXPECT_NEAR(in_psi(vacuum_of_cooling(degrees_celsius(20.0), degrees_celsius(20.0), sea_level)), 0.0, 1e-12);
}

// Vapour pressure over ice, Murphy and Koop 2005 (from memory): 259.9 Pa at -10, 103.26 Pa at -20, 38.0 Pa at -30 degC;
// at 0 degC ice and water have the same.
TEST(MoistAir, OverIceHasThePublishedVapourPressure) {
  EXPECT_NEAR(in_pascals(vapour_pressure(degrees_celsius(-10.0))), 259.9, 1.0);
  EXPECT_NEAR(in_pascals(vapour_pressure(degrees_celsius(-20.0))), 103.26, 0.5);
  EXPECT_NEAR(in_pascals(vapour_pressure(degrees_celsius(-30.0))), 38.0, 0.3);
  EXPECT_NEAR(in_pascals(vapour_pressure(degrees_celsius(-1e-9))), in_pascals(vapour_pressure(degrees_celsius(0.0))),
              0.1);
}

}  // namespace
}  // namespace riserun::hydraulics
