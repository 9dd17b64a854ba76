// Limits of the fluid formulas and edge cases of friction and air.
#include "hydraulics/fluid.h"

#include "hydraulics/air.h"
#include "hydraulics/friction.h"

#include <gtest/gtest.h>

#include <limits>

namespace riserun::hydraulics {
namespace {

TEST(Water, IsLiquidFromFreezingToEightyDegrees) {
  EXPECT_TRUE(water_at(degrees_celsius(0.0)).has_value());
  EXPECT_TRUE(water_at(degrees_celsius(80.0)).has_value());
  EXPECT_TRUE(water_at(degrees_fahrenheit(32.0)).has_value());
  EXPECT_TRUE(water_at(degrees_fahrenheit(176.0)).has_value());
  EXPECT_FALSE(water_at(degrees_celsius(-0.01)).has_value());
  EXPECT_FALSE(water_at(degrees_celsius(80.01)).has_value());
  EXPECT_FALSE(water_at(kelvins(std::numeric_limits<double>::quiet_NaN())).has_value());
}

TEST(Atmosphere, IsKnownFromMinus500To11000Metres) {
  EXPECT_TRUE(atmosphere_at(metres(-500.0)).has_value());
  EXPECT_TRUE(atmosphere_at(metres(11000.0)).has_value());
  EXPECT_FALSE(atmosphere_at(metres(-500.1)).has_value());
  EXPECT_FALSE(atmosphere_at(metres(11000.1)).has_value());
  EXPECT_FALSE(atmosphere_at(metres(std::numeric_limits<double>::quiet_NaN())).has_value());
  EXPECT_EQ(in_pascals(*atmosphere_at(metres(0.0))), 101325.0);
}

TEST(FrictionFactor, OfAnAbsurdlyRoughWallStaysFinite) {
  EXPECT_EQ(darcy_friction_factor(1.0e5, 3.0), darcy_friction_factor(1.0e5, kGreatestRelativeRoughness));
  EXPECT_LT(darcy_friction_factor(1.0e5, 3.0), 1.0);
  EXPECT_GT(crane_turbulent_friction_factor(metres(1.0e-6)), 0.0);
}

TEST(FrictionFactor, MeetsBothBranchesAtTheEndsOfTheJoin) {
  for (const double roughness : {0.0, 0.001, 0.05}) {
    EXPECT_EQ(darcy_friction_factor(kLaminarReynolds, roughness), 0.032);
    EXPECT_NEAR(darcy_friction_factor(kLaminarReynolds + 1.0e-9, roughness), 0.032, 1.0e-13);
    EXPECT_NEAR(darcy_friction_factor(kTurbulentReynolds - 1.0e-9, roughness),
                colebrook_friction_factor(kTurbulentReynolds, roughness), 1.0e-13);
  }
}

TEST(AirThroughAnOpening, IsNothingWithoutDifferenceAreaOrPressure) {
  EXPECT_EQ(orifice_air_flow(1.0e-5, 101325.0, 101325.0, 293.15, 293.15), 0.0);
  EXPECT_EQ(orifice_air_flow(0.0, 2.0e5, 101325.0, 293.15, 293.15), 0.0);
  EXPECT_EQ(orifice_air_flow(1.0e-5, 0.0, 0.0, 293.15, 293.15), 0.0);
  EXPECT_GT(orifice_air_flow(1.0e-5, 101325.0, 0.0, 293.15, 293.15), 0.0);
}

TEST(AirThroughAnOpening, TakesTheTemperatureOfTheHigherSide) {
  const double flow = orifice_air_flow(1.0e-5, 2.0e5, 1.0e5, 293.15, 350.0);
  EXPECT_EQ(flow, orifice_air_flow(1.0e-5, 2.0e5, 1.0e5, 293.15, 250.0));
  EXPECT_NE(flow, orifice_air_flow(1.0e-5, 2.0e5, 1.0e5, 300.0, 350.0));
}

// ASHRAE Handbook, Fundamentals, secondary coolants: 10 % of propylene glycol at 20 degC, 1007 kg/m3 and 1.4 to 1.5
// mPa s (from memory).
TEST(Water, WithATenthOfPropyleneGlycolIsALittleHeavierAndHalfAsThickAgain) {
  const Water plain = *water_at(degrees_celsius(20.0));
  const Water mixed = with_propylene_glycol(plain, 0.1);
  EXPECT_NEAR(in_kilograms_per_cubic_metre(mixed.density), 1007.0, 2.0);
  EXPECT_NEAR(in_pascal_seconds(mixed.viscosity), 1.43e-3, 0.07e-3);
  EXPECT_EQ(with_propylene_glycol(plain, 0.0).density, plain.density);
  EXPECT_EQ(with_propylene_glycol(plain, 0.0).viscosity, plain.viscosity);
}

}  // namespace
}  // namespace riserun::hydraulics
