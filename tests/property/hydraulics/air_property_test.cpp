// Laws of air through an opening: odd, rising, continuous with its slope from no difference to choking.
#include "hydraulics/air.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace riserun::hydraulics {
namespace {

TEST(AirProperty, FlowRisesWithTheDifferenceUntilItChokes) {
  const double upstream = 140000.0;
  double last = -1.0;
  for (double drop = 0.0; drop < 0.999; drop += 1.0e-4) {
    const double flow = orifice_air_flow(1.0e-5, upstream, upstream * (1.0 - drop), 293.15, 293.15);
    if (drop < 1.0 - critical_pressure_ratio()) {
      EXPECT_GT(flow, last) << drop;
    } else {
      EXPECT_GE(flow, last) << drop;
    }
    last = flow;
  }
}

TEST(AirProperty, FlowIsOddInTheTwoSides) {
  std::mt19937_64 random(1);
  std::uniform_real_distribution<double> pressure(0.0, 1.0e6);
  std::uniform_real_distribution<double> kelvin(250.0, 350.0);
  for (int i = 0; i < 10000; ++i) {
    const double a = pressure(random), b = pressure(random), ta = kelvin(random), tb = kelvin(random);
    EXPECT_EQ(orifice_air_flow(1.0e-5, a, b, ta, tb), -orifice_air_flow(1.0e-5, b, a, tb, ta));
  }
}

// Both joins, at kSmoothPressureShare and at choking: value and slope from the left equal those from the right.
TEST(AirProperty, FlowAndItsSlopeAreContinuousAtBothJoins) {
  const double upstream = 120000.0;
  const auto flow = [&](double drop) {
    return orifice_air_flow(1.0, upstream, upstream * (1.0 - drop), 293.15, 293.15);
  };
  const double typical = flow(0.3);
  for (const double join : {kSmoothPressureShare, 1.0 - critical_pressure_ratio()}) {
    const double step = 1.0e-3 * join;
    const double left = (flow(join) - flow(join - step)) / step;
    const double right = (flow(join + step) - flow(join)) / step;
    EXPECT_NEAR(left, right, 0.01 * typical / join * std::sqrt(join)) << join;
    EXPECT_NEAR(flow(join - 1.0e-12), flow(join + 1.0e-12), 1.0e-8 * typical) << join;
  }
}

// The smooth join again by one-sided differences of second order, whose error is near 1e-6.
TEST(AirProperty, SlopeIsTheSameOnBothSidesOfTheSmoothJoin) {
  const auto flow = [](double drop) { return orifice_air_flow(1.0, 1.0e5, 1.0e5 * (1.0 - drop), 293.15, 293.15); };
  const double join = kSmoothPressureShare;
  const double step = 1.0e-3 * join;
  const auto slope = [&](double h) {
    return (-3.0 * flow(join) + 4.0 * flow(join + h) - flow(join + 2.0 * h)) / (2.0 * h);
  };
  EXPECT_NEAR(slope(step) / slope(-step), 1.0, 1.0e-5);
}

TEST(AirProperty, SlopeAtNoDifferenceIsFinite) {
  const auto flow = [](double pascals_over) {
    return orifice_air_flow(1.0, 101325.0 + pascals_over, 101325.0, 293.15, 293.15);
  };
  EXPECT_NEAR(flow(1.0e-3) / 1.0e-3, flow(1.0e-5) / 1.0e-5, 1.0e-3 * flow(1.0e-3) / 1.0e-3);
  EXPECT_EQ(flow(0.0), 0.0);
  EXPECT_NEAR(flow(-0.1), -flow(0.1), 1.0e-5 * flow(0.1));
}

TEST(AirProperty, BoreForAFlowPassesThatFlow) {
  const Temperature temperature = degrees_celsius(20.0);
  for (const double upstream : {101326.0, 103000.0, 150000.0, 900000.0}) {
    const AbsolutePressure from = absolute_pascals(upstream), to = absolute_pascals(101325.0);
    const MassFlow wanted = kilograms_per_second(0.004);
    const Length bore = bore_for_air_flow(wanted, 0.61, from, to, temperature);
    EXPECT_NEAR(orifice_air_flow(effective_area(bore, 0.61), from, to, temperature) / wanted, 1.0, 1.0e-12);
  }
}

TEST(AirProperty, FreeAirConversionsAreInverse) {
  const AbsolutePressure atmosphere = *atmosphere_at(metres(1200.0));
  const Temperature temperature = degrees_celsius(31.0);
  const VolumeFlow free_air = cubic_feet_per_minute(3.5);
  const MassFlow mass = mass_flow_of_free_air(free_air, atmosphere, temperature);
  EXPECT_NEAR(in_cubic_feet_per_minute(free_air_of_mass_flow(mass, atmosphere, temperature)), 3.5, 1.0e-13);
  const Volume hour = free_air_of_mass(mass * seconds(3600.0), atmosphere, temperature);
  EXPECT_NEAR(in_cubic_feet(hour), 210.0, 1.0e-10);
}

}  // namespace
}  // namespace riserun::hydraulics
