// Transfers whose course is known in closed form: water alone, through a line of constant loss, under an air pressure
// that stays.
//
//     dH/dt = -a sqrt(2 g H / K) (1/A1 + 1/A2)   ->   t = 2 sqrt(K) (sqrt H0 - sqrt H1) / (a sqrt(2 g) (1/A1 + 1/A2))
//
// (Torricelli 1643 for K = 1 and one falling level.) The worked examples name the publication that they are taken from;
// a hole of discharge coefficient Cd is a line of K = 1/Cd^2 on the hole's bore.
#include "transfer/integrate.h"
#include "transfer/transfer.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace riserun::transfer {
namespace {

constexpr double kGravity = quantity::kStandardGravity;

/// A line without length: K on one bore, both ways.
hydraulics::Line constant_loss(double bore_m, double k) {
  hydraulics::LineElement element;
  element.name = "opening";
  element.bore = metres(bore_m);
  return {{element}, {k, 0.0, 0.0, ""}, {k, 0.0, 0.0, ""}};
}

/// Two tanks of those areas with plenty of height, the upper one's inlet in its floor, at `floor`.
System two_tanks(double reservoir_area, double table_area, double floor, double bore, double k) {
  System s;
  s.reservoir = {metres(reservoir_area), metres(1.0), metres(50.0), 0.0};
  s.table = {metres(table_area), metres(1.0), metres(floor), metres(20.0), 0.0};
  s.line = constant_loss(bore, k);
  s.water = {kilograms_per_cubic_metre(998.2), pascal_seconds(1.0e-3), absolute_pascals(2339.0)};
  s.temperature = degrees_celsius(20.0);
  s.atmosphere = absolute_pascals(101325.0);
  s.vent = {metres(3.0), 1.0, 1};  // no pressure under it
  s.air.receiver_pressure = bar_gauge(7.0);
  s.air.feed_bore = metres(1.0);  // so is the feed: the ullage is at the set pressure from the first moment on
  s.air.regulator_rated_flow = cubic_metres_per_second(1.0);
  s.air.droop = 1.0e-3;
  return s;
}

double levelling_time(double h0, double h1, double k, double bore, double area_1, double area_2) {
  const double a = std::numbers::pi / 4.0 * bore * bore;
  return 2.0 * std::sqrt(k) * (std::sqrt(h0) - std::sqrt(h1)) /
         (a * std::sqrt(2.0 * kGravity) * (1.0 / area_1 + 1.0 / area_2));
}

double bore_of_area(double area) { return std::sqrt(4.0 * area / std::numbers::pi); }

constexpr double kWide = 1.0e9;  // m2 of a tank whose level doesn't move

TEST(ClosedForms, TankDrainsLikeTorricelli) {
  // Choudhary and Om Prakash, Fluid Mechanics, Example 6.17: 1.2 m tank, 50 mm orifice, Cd 0.6, from 3 m: 750.78 s
  // with g = 9.81.
  const double area = std::numbers::pi / 4.0 * 1.2 * 1.2;
  System s = two_tanks(kWide, area, 1.0, 0.05, 1.0 / (0.6 * 0.6));
  const Drain d = drain(s, {metres(1.0), metres(3.0), {}});
  // The level below is the hole's own, and rises by a few nanometres: they level there.
  EXPECT_TRUE(d.stop == Stop::goal_reached || d.stop == Stop::pressures_balance);
  EXPECT_NEAR(in_seconds(d.time), 750.78 * std::sqrt(9.81 / kGravity), 750.78 * 1.0e-3);
  EXPECT_NEAR(in_cubic_metres(d.left_in_table), 0.0, 1.0e-6);
}

TEST(ClosedForms, TankDrainsPartWay) {
  // "Time to drain", an exam-preparation problem for the FE Civil formula: 4 ft tank, 5 in2 outlet, Cd 1, 6 ft to 2 ft:
  // printed 94 s; 93.38 s without its rounded steps, g = 32.2 ft/s2.
  const double diameter = 4.0 * quantity::kMetresPerFoot;
  const double hole = 5.0 * quantity::kMetresPerInch * quantity::kMetresPerInch;
  System s = two_tanks(kWide, std::numbers::pi / 4.0 * diameter * diameter, 0.0, bore_of_area(hole), 1.0);
  // The level below is at the hole, the table's floor; the drain ends at an inlet 2 ft above it.
  s.inlet_height = feet(2.0);
  const Drain d = drain(s, {metres(0.0), feet(6.0), {}});
  EXPECT_EQ(d.stop, Stop::goal_reached);
  EXPECT_NEAR(in_seconds(d.time), 93.38 * std::sqrt(32.2 * quantity::kMetresPerFoot / kGravity), 93.38 * 1.0e-3);
  EXPECT_NEAR(in_seconds(d.time), 94.0, 0.7);
}

TEST(ClosedForms, TwoTanksLevel) {
  // Quasi-steady levelling at constant K: 1.5 and 1.0 m2, 1.2 m apart, 26.64 mm, K 6: 1304.41 s, 0.72 m3.
  const double k = 6.0, bore = 0.02664;
  System s = two_tanks(1.5, 1.0, 0.0, bore, k);
  const Drain d = drain(s, {metres(1.0), metres(2.2), {}});
  EXPECT_EQ(d.stop, Stop::pressures_balance);
  EXPECT_NEAR(in_seconds(d.time), 1304.41, 1304.41 * 1.0e-3);
  EXPECT_NEAR(in_seconds(d.time), levelling_time(1.2, 0.0, k, bore, 1.5, 1.0), 1304.41 * 1.0e-3);
  EXPECT_NEAR(in_cubic_metres(d.volume), 0.72, 0.72e-6);
  EXPECT_EQ(d.limited_by, "levels");
}

TEST(ClosedForms, FillAgainstAConstantLevel) {
  // Over a rim-high inlet into a wide reservoir's table: the head stays, so t = V / (a sqrt(2 g H / K)).
  const double bore = 0.0266446, k = 5.0, lift = 0.9, set = 14000.0;
  System s = two_tanks(kWide, 1.62, 1.0 + lift - 0.5, bore, k);
  s.inlet_height = metres(0.5);
  s.reservoir.height = metres(1.001);
  s.air.set_pressure = gauge_pascals(set);
  const Fill f = fill(s, {metres(1.0), metres(0.0), gauge_pascals(set)}, metres(0.1));
  const double head = set / (998.2 * kGravity) - lift;
  const double flow = std::numbers::pi / 4.0 * bore * bore * std::sqrt(2.0 * kGravity * head / k);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  EXPECT_NEAR(in_seconds(f.time), 0.162 / flow, 1.0e-3 * 0.162 / flow);
  EXPECT_NEAR(in_cubic_metres_per_second(f.peak_flow), flow, 1.0e-3 * flow);
}

struct FillCase {
  const char* name;
  double pressure, reservoir_area, table_area, difference, volume, bore, k, expected;
};

class FillWithBothLevelsMoving : public testing::TestWithParam<FillCase> {};

TEST_P(FillWithBothLevelsMoving, TakesTheClosedFormsTime) {
  const FillCase c = GetParam();
  // The table holds a little at first, so that its inlet is under water from the start on.
  System s = two_tanks(c.reservoir_area, c.table_area, 1.0 + c.difference - 0.01, c.bore, c.k);
  s.reservoir.height = metres(1.3);
  s.air.set_pressure = gauge_pascals(c.pressure);
  const Start start{metres(1.0), metres(0.01), gauge_pascals(c.pressure)};
  const Fill f = fill(s, start, metres(0.01 + c.volume / c.table_area));
  const double h0 = c.pressure / (998.2 * kGravity) - c.difference;
  const double h1 = h0 - c.volume * (1.0 / c.reservoir_area + 1.0 / c.table_area);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  EXPECT_NEAR(in_seconds(f.time), c.expected, c.expected * 1.0e-3);
  EXPECT_NEAR(in_seconds(f.time), levelling_time(h0, h1, c.k, c.bore, c.reservoir_area, c.table_area),
              c.expected * 1.0e-3);
  EXPECT_NEAR(in_cubic_metres(f.volume), c.volume, 1.0e-9);
}

// Quasi-steady filling with both levels moving, constant air pressure and constant K; computed by the formula above.
INSTANTIATE_TEST_SUITE_P(ClosedForms, FillWithBothLevelsMoving,
                         testing::Values(FillCase{"120 litres", 14000.0, 0.72, 1.62, 0.7, 0.12, 0.0266446, 5.0, 139.84},
                                         FillCase{"200 litres", 20000.0, 1.08, 2.4, 0.9, 0.2, 0.0209296, 6.2, 326.13}),
                         [](const auto& row) { return row.index == 0 ? "Litres120" : "Litres200"; });

}  // namespace
}  // namespace riserun::transfer
