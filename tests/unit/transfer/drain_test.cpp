// What limits a table's draining, and where it ends.
#include "unit/transfer/bench.h"

#include <gtest/gtest.h>

namespace riserun::transfer {
namespace {

/// The bench with so wide a line and vent that only the mouth's rim holds the last of the water back.
System open_bench(double bore_m) {
  System s = bench();
  hydraulics::LineElement pipe;
  pipe.name = "pipe";
  pipe.bore = metres(0.5);
  s.line = hydraulics::Line({pipe}, {0.5, 1.0, 0.0, ""}, {0.5, 1.0, 0.0, ""});
  s.vent.bore = metres(1.0);
  s.mouth = {metres(bore_m), inches(1.0 / 8.0)};
  return s;
}

// t = 2 A / (1.7046 pi D) (h2^-0.5 - h1^-0.5): with 1.5 m2 and 40.894 mm from 25.4 to 3.175 mm 157.1 s.
TEST(Drain, TheLastInchFallsOverTheRim) {
  const System s = open_bench(0.040894);
  const Start low{metres(0.05), millimetres(25.4), gauge_pascals(0.0)};
  const Drain d = drain(s, low);
  EXPECT_EQ(d.stop, Stop::goal_reached);
  EXPECT_NEAR(in_seconds(d.time), 169.7 * 1.5 / 1.62, 0.2);
  EXPECT_NEAR(in_metres(d.table_depth), 3.175e-3, 1e-7);
  // The range is that between a sharp crest and a broad one in use.
  EXPECT_NEAR(in_seconds(d.time_low), in_seconds(d.time) * 1.7046 / 1.805, 0.5);
  EXPECT_NEAR(in_seconds(d.time_high), in_seconds(d.time) * 1.7046 / 1.55, 0.5);
  System thinner = s;
  thinner.mouth.film = millimetres(1.0);
  EXPECT_NEAR(in_seconds(drain(thinner, low).time), 374.9 * 1.5 / 1.62, 0.4);
}

// With ten times the rim the weir's time is a tenth.
TEST(Drain, IsLimitedByTheTablesOpening) {
  const Drain d = drain(open_bench(0.040894), {metres(0.05), millimetres(25.4), gauge_pascals(0.0)});
  EXPECT_EQ(d.limited_by, "table's opening");
  EXPECT_NEAR(in_seconds(d.limits.front().time_without), 0.1 * in_seconds(d.time), 0.02 * in_seconds(d.time));
}

TEST(Drain, JustBelowTheFilmItIsDoneAndJustAboveItRuns) {
  const System s = open_bench(0.040894);
  EXPECT_EQ(in_seconds(drain(s, {metres(0.05), inches(0.1249), gauge_pascals(0.0)}).time), 0.0);
  EXPECT_GT(in_seconds(drain(s, {metres(0.05), inches(0.126), gauge_pascals(0.0)}).time), 0.0);
}

TEST(Drain, ADeepTableRunsByItsLine) {
  System s = bench();
  const Start up{metres(0.1), metres(0.14), gauge_pascals(0.0)};
  System rim = s;
  rim.mouth = {metres(0.0266), inches(1.0 / 8.0)};
  EXPECT_EQ(drain(rim, up).peak_flow, drain(s, up).peak_flow);
  EXPECT_LT(drain(rim, up).table_depth, inches(0.1251));
}

TEST(Drain, EmptiesTheTableToItsInlet) {
  System s = bench();
  const Drain flat = drain(s, {metres(0.2), metres(0.1), gauge_pascals(7000.0)});
  EXPECT_EQ(flat.stop, Stop::goal_reached);
  EXPECT_NEAR(in_cubic_metres(flat.left_in_table), 0.0, 1.0e-9);
  s.inlet_height = metres(0.02);
  const Drain raised = drain(s, {metres(0.2), metres(0.1), gauge_pascals(7000.0)});
  EXPECT_EQ(raised.stop, Stop::goal_reached);
  EXPECT_NEAR(in_cubic_metres(raised.left_in_table), 0.03, 1.0e-9);
}

TEST(Drain, NothingIsDrawnBackOverAnInletThatStandsOverTheWater) {
  System s = bench();
  s.inlet_height = metres(0.2);
  const Drain d = drain(s, {metres(0.2), metres(0.1), gauge_pascals(0.0)});
  EXPECT_EQ(in_seconds(d.time), 0.0);
  EXPECT_NEAR(in_cubic_metres(d.left_in_table), 0.15, 1.0e-12);
}

TEST(Drain, PressureLeftInTheUllageStillLiftsAtFirst) {
  const Drain d = drain(bench(), {metres(0.2), metres(0.1), gauge_pascals(12000.0)});
  EXPECT_EQ(d.stop, Stop::goal_reached);
  double most = 0.0;
  for (const Instant& i : d.history) most = std::max(most, in_metres(i.table_depth));
  EXPECT_GT(most, 0.1);
}

TEST(Drain, ASmallVentLimits) {
  System s = bench();
  s.vent.bore = millimetres(3.0);
  const Start full{metres(0.2), metres(0.1), gauge_pascals(7000.0)};
  const Drain slow = drain(s, full);
  EXPECT_EQ(slow.limited_by, "vent");
  s.vent.count = 4;
  EXPECT_LT(drain(s, full).time, slow.time);
}

TEST(Drain, WithoutAVentTheTrappedAirHoldsTheWater) {
  System s = bench();
  s.vent.bore = metres(0.0);
  const Drain d = drain(s, {metres(0.2), metres(0.1), gauge_pascals(0.0)});
  EXPECT_EQ(d.stop, Stop::pressures_balance);
  EXPECT_GT(d.left_in_table, cubic_metres(0.1));
}

TEST(Drain, AReservoirThatIsTooSmallFillsUp) {
  System s = bench();
  const Drain d = drain(s, {metres(0.35), metres(0.12), gauge_pascals(7000.0)});
  EXPECT_EQ(d.stop, Stop::reservoir_full);
  EXPECT_NEAR(in_metres(d.reservoir_depth), 0.4, 1.0e-3);
  EXPECT_GT(d.left_in_table, cubic_metres(0.1));
}

TEST(Drain, LossesAddUpToTheLinesHead) {
  const System s = bench();
  const Drain d = drain(s, {metres(0.2), metres(0.1), gauge_pascals(7000.0)});
  double sum = 0.0;
  for (const hydraulics::ElementLoss& loss : d.losses_at_mean) sum += in_metres(loss.head);
  const Head head = s.line.head_loss(d.mean_flow, hydraulics::Direction::backward, s.water);
  EXPECT_NEAR(sum, in_metres(head), 1.0e-12);
}

}  // namespace
}  // namespace riserun::transfer
