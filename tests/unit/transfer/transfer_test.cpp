// What stops a fill, what its pressures are, and what it says about being left alone.
#include "quantity/input_error.h"
#include "transfer/integrate.h"
#include "unit/transfer/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace riserun::transfer {
namespace {

TEST(Fill, ReachesItsDepthAndMovesTablesWaterPlusTheLines) {
  const System s = bench();
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  EXPECT_NEAR(in_metres(f.table_depth), 0.1, 1.0e-9);
  // The line stood full to the reservoir's level; the rest of it has to be filled first.
  const double dry = in_cubic_metres(s.line.volume()) * (0.8 - 0.35) / (0.8 - 0.015);
  EXPECT_NEAR(in_cubic_metres(f.volume), 0.15 + dry, 1.0e-9);
  EXPECT_NEAR(in_metres(f.reservoir_depth), 0.35 - in_cubic_metres(f.volume), 1.0e-9);
  EXPECT_GT(f.peak_flow, f.mean_flow);
}

TEST(Fill, TheCourseAloneIsThatOfTheWhole) {
  const System s = bench();
  const Fill whole = fill(s, kCharged, kWanted);
  const Fill course = fill(s, kCharged, kWanted, Detail::course);
  EXPECT_EQ(course.stop, whole.stop);
  EXPECT_EQ(course.time, whole.time);
  EXPECT_EQ(course.table_depth, whole.table_depth);
  EXPECT_EQ(course.history.size(), whole.history.size());
  EXPECT_EQ(course.coast_up, whole.coast_up);
  EXPECT_TRUE(course.limits.empty());
  EXPECT_FALSE(course.time_per_tenth_psi);
  EXPECT_EQ(pressure_to_finish(s, kCharged, kWanted), whole.pressure_to_finish);

  const Start up{whole.reservoir_depth, whole.table_depth, whole.hold_pressure};
  EXPECT_EQ(drain(s, up, Detail::course).time, drain(s, up).time);
  EXPECT_EQ(drain(s, up, Detail::course).left_in_table, drain(s, up).left_in_table);
}

TEST(Fill, PressuresComeFromTheLevelsAlone) {
  const System s = bench();
  const Fill f = fill(s, kCharged, kWanted);
  const double gone = in_cubic_metres(f.volume);
  EXPECT_NEAR(in_pascals(f.hold_pressure), rho_g(s) * (0.9 - (0.35 - gone)), 1.0e-6);
  EXPECT_EQ(f.pressure_to_finish, f.hold_pressure);
  EXPECT_NEAR(in_pascals(f.pressure_to_start), rho_g(s) * (0.8 - (0.35 - (gone - 0.15))), 1.0e-6);
  EXPECT_NEAR(in_metres(f.margin_over_riser_end), 0.35 - gone - 0.015, 1.0e-9);
  // 0.1 psi lifts the table by its share of the head: 1 / (1 + 1.5).
  EXPECT_NEAR(in_metres(f.rise_per_tenth_psi), 689.4757 / rho_g(s) / 2.5, 1.0e-6);
}

TEST(Fill, JustUnderThePressureToFinishItBalancesAndJustOverItArrives) {
  System s = bench();
  const GaugePressure needed = fill(s, kCharged, kWanted).pressure_to_finish;
  s.air.set_pressure = gauge_pascals(in_pascals(needed) * 0.995);
  const Fill under = fill(s, kCharged, kWanted);
  EXPECT_EQ(under.stop, Stop::pressures_balance);
  EXPECT_EQ(under.limited_by, "set pressure");
  EXPECT_LT(under.table_depth, kWanted);
  EXPECT_EQ(under.pressure_to_finish, needed);
  s.air.set_pressure = gauge_pascals(in_pascals(needed) * 1.005);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::goal_reached);
}

TEST(Fill, BelowThePressureToStartNothingArrives) {
  System s = bench();
  s.air.set_pressure = gauge_pascals(0.98 * in_pascals(fill(s, kCharged, kWanted).pressure_to_start));
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_EQ(f.stop, Stop::pressures_balance);
  EXPECT_EQ(f.table_depth, metres(0.0));
}

TEST(Fill, WithoutSupplyItBalancesAtOnce) {
  for (const auto& cut : {+[](AirSupply& air) { air.set_pressure = gauge_pascals(0.0); },
                          +[](AirSupply& air) { air.feed_bore = metres(0.0); },
                          +[](AirSupply& air) { air.receiver_pressure = gauge_pascals(0.0); }}) {
    System s = bench();
    cut(s.air);
    const Fill f = fill(s, kCharged, kWanted);
    EXPECT_EQ(f.stop, Stop::pressures_balance);
    EXPECT_EQ(in_seconds(f.time), 0.0);
    EXPECT_EQ(f.volume, cubic_metres(0.0));
  }
}

TEST(Fill, AReceiverAloneRunsOut) {
  System s = bench();
  s.air.free_air_delivery = litres_per_minute(0.0);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::goal_reached);
  s.air.receiver = litres(15.0);
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_EQ(f.stop, Stop::pressures_balance);
  EXPECT_EQ(f.limited_by, "compressor");
}

TEST(Fill, TooSmallAChargeUncoversTheRiser) {
  const Fill f = fill(bench(), {metres(0.12), {}, {}}, kWanted);
  EXPECT_EQ(f.stop, Stop::riser_uncovered);
  EXPECT_NEAR(in_metres(f.reservoir_depth), 0.015, 1.0e-9);
  EXPECT_EQ(f.limited_by, "charge");
  EXPECT_LT(f.margin_over_riser_end, metres(0.0));
  EXPECT_EQ(f.walk_away, WalkAway::air_blows_through);
}

TEST(Fill, ARiserThatEndsAboveTheWaterStopsAtOnce) {
  const Fill f = fill(bench(), {metres(0.01), {}, {}}, kWanted);
  EXPECT_EQ(f.stop, Stop::riser_uncovered);
  EXPECT_EQ(in_seconds(f.time), 0.0);
}

TEST(Fill, AWantedDepthOverTheRimOverflows) {
  const Fill f = fill(bench(), kCharged, metres(0.2));
  EXPECT_EQ(f.stop, Stop::table_overflows);
  EXPECT_NEAR(in_metres(f.table_depth), 0.15, 1.0e-9);
  EXPECT_EQ(f.limited_by, "rim");
}

TEST(Fill, ATableThatHasItsDepthIsDone) {
  const Fill f = fill(bench(), {metres(0.35), metres(0.11), {}}, kWanted);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  EXPECT_EQ(in_seconds(f.time), 0.0);
}

TEST(Fill, TheRegulatorNeverLetsAirBack) {
  System s = bench();
  s.air.set_pressure = gauge_pascals(3000.0);
  const Fill f = fill(s, {metres(0.35), metres(0.0), gauge_pascals(9000.0)}, kWanted);
  EXPECT_EQ(f.free_air, cubic_metres(0.0));
  EXPECT_EQ(in_pascals(f.highest_ullage_pressure), 9000.0);
  EXPECT_GT(f.table_depth, metres(0.0));  // the air that was there still pushes
}

TEST(Fill, AToppedUpTableRunsBackUntilThePressureIsThere) {
  const Fill f = fill(bench(), {metres(0.3), metres(0.05), gauge_pascals(0.0)}, kWanted);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  double least = 1.0;
  for (const Instant& i : f.history) least = std::min(least, in_metres(i.table_depth));
  EXPECT_LT(least, 0.05);
}

TEST(Fill, AnInletOverTheWaterNeedsNoPressureToHold) {
  System s = bench();
  s.inlet_height = metres(0.12);
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_EQ(f.stop, Stop::goal_reached);
  EXPECT_EQ(in_pascals(f.hold_pressure), 0.0);
  EXPECT_GT(f.pressure_to_finish, f.pressure_to_start);
  EXPECT_NEAR(in_pascals(f.pressure_to_finish), rho_g(s) * (0.92 - in_metres(f.reservoir_depth)), 1.0e-6);
}

TEST(Fill, AnInletOverTheRimStillFillsAndOverflows) {
  System s = bench();
  s.inlet_height = metres(0.2);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::goal_reached);
  EXPECT_EQ(fill(s, kCharged, metres(0.2)).stop, Stop::table_overflows);
  EXPECT_EQ(fill(s, kCharged, kWanted).walk_away, WalkAway::table_overflows);
}

TEST(Fill, ASelfLimitingSettingStopsTheWaterHalfAnInchUnderTheRim) {
  System s = bench();
  const auto setting = fill(s, kCharged, kWanted).self_limiting_pressure;
  ASSERT_TRUE(setting.has_value());
  s.air.set_pressure = *setting;
  const Fill f = fill(s, kCharged, metres(0.15));
  EXPECT_EQ(f.stop, Stop::pressures_balance);
  EXPECT_NEAR(in_metres(f.table_depth), 0.15 - 0.0127, 2.0e-4);
  EXPECT_EQ(f.walk_away, WalkAway::water_stops_below_rim);
  EXPECT_EQ(f.walk_away_spill, cubic_metres(0.0));
  // Too little water for that: the riser would uncover first.
  EXPECT_FALSE(fill(s, {metres(0.2), {}, {}}, kWanted).self_limiting_pressure.has_value());
}

TEST(Fill, ForgottenItSpillsUntilTheRiserUncovers) {
  System s = bench();
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_EQ(f.walk_away, WalkAway::table_overflows);
  const double in_line = in_cubic_metres(f.volume) - 0.15;
  EXPECT_NEAR(in_cubic_metres(f.walk_away_spill), (0.35 - 0.015) - in_line - 1.5 * 0.15, 1.0e-9);
}

TEST(Fill, EachResistanceCanBeTheOneThatLimits) {
  System weak_compressor = bench();
  weak_compressor.air.receiver = litres(0.0);
  weak_compressor.air.free_air_delivery = litres_per_minute(15.0);
  EXPECT_EQ(fill(weak_compressor, kCharged, kWanted).limited_by, "compressor");
  System small_regulator = bench();
  small_regulator.air.regulator_rated_flow = litres_per_minute(10.0);
  EXPECT_EQ(fill(small_regulator, kCharged, kWanted).limited_by, "regulator");
  System pinched_feed = bench();
  pinched_feed.air.feed_bore = millimetres(0.5);
  pinched_feed.air.regulator_rated_flow = litres_per_minute(1200.0);
  EXPECT_EQ(fill(pinched_feed, kCharged, kWanted).limited_by, "feed line");
  System pinched_behind = bench();
  pinched_behind.air.after_regulator = hydraulics::AirLine({hydraulics::drilled_hole("hole", millimetres(1.0))});
  EXPECT_EQ(fill(pinched_behind, kCharged, kWanted).limited_by, "air line");
  System rough_line = bench();
  std::vector<hydraulics::LineElement> elements = rough_line.line.elements();
  elements[1].fixed_k = 30.0;
  rough_line.line = hydraulics::Line(elements, rough_line.line.first_end(), rough_line.line.last_end());
  EXPECT_EQ(fill(rough_line, kCharged, kWanted).limited_by, "line");
  elements[0].fixed_k = 60.0;
  rough_line.line = hydraulics::Line(elements, rough_line.line.first_end(), rough_line.line.last_end());
  EXPECT_EQ(fill(rough_line, kCharged, kWanted).limited_by, "riser");
}

TEST(Fill, HistoryRunsFromTheStartToTheEnd) {
  const Fill f = fill(bench(), kCharged, kWanted);
  ASSERT_GT(f.history.size(), 20u);
  EXPECT_LE(f.history.size(), 402u);
  EXPECT_EQ(in_seconds(f.history.front().time), 0.0);
  EXPECT_EQ(f.history.back().time, f.time);
  EXPECT_EQ(f.history.back().table_depth, f.table_depth);
  double free_air = 0.0;
  for (std::size_t i = 1; i < f.history.size(); ++i) {
    EXPECT_GE(f.history[i].time, f.history[i - 1].time);
    free_air += 0.5 * in_cubic_metres_per_second(f.history[i].free_air + f.history[i - 1].free_air) *
                in_seconds(f.history[i].time - f.history[i - 1].time);
  }
  EXPECT_NEAR(free_air, in_cubic_metres(f.free_air), 0.01 * free_air);
}

TEST(Fill, TheFastAndTheSlowCourseEndAtTheEndsOfTheTimesRange) {
  const Fill f = fill(bench(), kCharged, kWanted);
  ASSERT_GT(f.history_fast.size(), 20u);
  ASSERT_GT(f.history_slow.size(), 20u);
  EXPECT_EQ(f.history_fast.back().time, f.time_low);
  EXPECT_EQ(f.history_slow.back().time, f.time_high);
  EXPECT_LT(f.time_low, f.time);
  EXPECT_GT(f.time_high, f.time);
  EXPECT_NEAR(in_metres(f.history_slow.back().table_depth), in_metres(f.table_depth), 1e-6);
}

TEST(Fill, TheSettingForATimeIsNoneWhenTheHighestIsTooLow) {
  const System s = bench();
  EXPECT_FALSE(setting_for_time(s, kCharged, kWanted, seconds(1.0), gauge_pascals(20000.0)).has_value());
  EXPECT_FALSE(setting_for_time(s, kCharged, kWanted, hours(1.0), gauge_pascals(1000.0)).has_value());
  EXPECT_TRUE(setting_for_time(s, kCharged, kWanted, minutes(3.0), gauge_pascals(40000.0)).has_value());
}

/// A check valve that opens at that difference, as wide as the feed.
hydraulics::AirLine check_valve(PressureDifference opens) {
  hydraulics::AirElement check = hydraulics::air_opening("check valve", millimetres(12.0), 0.8);
  check.opens_at = opens;
  check.one_way = true;
  return hydraulics::AirLine({check});
}

TEST(CheckValve, BalancesJustBelowItsSpringOverThePressureAndArrivesJustAbove) {
  System s = bench();
  const GaugePressure without = fill(s, kCharged, kWanted).pressure_to_finish;
  s.air.after_regulator = check_valve(pascals(3000.0));
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_NEAR(in_pascals(f.pressure_to_finish), in_pascals(without) + 3000.0, 1.0e-9 * in_pascals(without));
  s.air.set_pressure = gauge_pascals(in_pascals(without) + 3000.0 - 50.0);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::pressures_balance);
  s.air.set_pressure = gauge_pascals(in_pascals(without) + 3000.0 + 50.0);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::goal_reached);
}

TEST(LockUp, RaisesWhatIsReachedWhenLeftAloneAndNothingElse) {
  System s = bench();
  const Fill tight = fill(s, kCharged, kWanted);
  EXPECT_EQ(tight.pressure_left_alone, s.air.set_pressure);
  s.air.lock_up = pascals(1500.0);
  const Fill locked = fill(s, kCharged, kWanted);
  EXPECT_NEAR(in_pascals(locked.pressure_left_alone), in_pascals(s.air.set_pressure) + 1500.0, 1e-6);
  EXPECT_EQ(locked.time, tight.time);
  ASSERT_TRUE(tight.self_limiting_pressure && locked.self_limiting_pressure);
  EXPECT_NEAR(in_pascals(*tight.self_limiting_pressure - *locked.self_limiting_pressure), 1500.0, 1e-6);
}

TEST(Vents, ThroughALineStandInPlaceOfTheBore) {
  const Start up{metres(0.2), metres(0.1), gauge_pascals(7000.0)};
  System s = bench();
  const Drain bore = drain(s, up);
  s.vent.ways = {hydraulics::AirLine({hydraulics::air_opening("vent", millimetres(12.0), 0.6)})};
  const Drain same = drain(s, up);
  EXPECT_NEAR(in_seconds(same.time), in_seconds(bore.time), 1.0e-6 * in_seconds(bore.time));
  s.vent.ways = {hydraulics::AirLine({hydraulics::drilled_hole("hole", millimetres(1.5))})};
  EXPECT_GT(drain(s, up).time, same.time);
  EXPECT_EQ(drain(s, up).limited_by, "vent");
  // A check valve in it keeps its spring's pressure back.
  s.vent.ways = {check_valve(pascals(500.0))};
  EXPECT_NE(drain(s, up).stop, Stop::reservoir_full);
}

TEST(WaterCheck, HoldsTheTableAndAsksItsSpringOfTheFill) {
  System s = bench();
  const Fill plain = fill(s, kCharged, kWanted);
  s.check = {true, pascals(2000.0)};
  const Fill f = fill(s, kCharged, kWanted);
  EXPECT_NEAR(in_pascals(f.pressure_to_start), in_pascals(plain.pressure_to_start) + 2000.0, 1e-6);
  EXPECT_NEAR(in_pascals(f.pressure_to_finish), in_pascals(plain.pressure_to_finish) + 2000.0, 1e-6);
  EXPECT_EQ(f.hold_pressure, gauge_pascals(0.0));
  s.air.set_pressure = gauge_pascals(in_pascals(f.pressure_to_finish) - 50.0);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::pressures_balance);
  s.air.set_pressure = gauge_pascals(in_pascals(f.pressure_to_finish) + 50.0);
  EXPECT_EQ(fill(s, kCharged, kWanted).stop, Stop::goal_reached);
  const Drain d = drain(s, {metres(0.2), metres(0.1), gauge_pascals(3000.0)});
  EXPECT_EQ(d.stop, Stop::pressures_balance);
  EXPECT_NEAR(in_metres(d.table_depth), 0.1, 1e-12);
}

// The riser counts as uncovered where the dip of the surface reaches it: h = 0.69 (Q^2/g)^0.2.
TEST(Dip, UncoversTheRiserEarlierTheFasterTheWater) {
  System s = bench();
  s.dip_uncovers_riser = true;
  const Fill f = fill(s, {metres(0.14), {}, {}}, kWanted);
  ASSERT_EQ(f.stop, Stop::riser_uncovered);
  const double q = in_cubic_metres_per_second(f.last_flow);
  EXPECT_NEAR(in_metres(f.reservoir_depth) - 0.015, 0.69 * std::pow(q * q / 9.80665, 0.2), 1e-6);
}

TEST(Sensitivity, ATenthOfAPsiMoreIsQuickerByWhatItSays) {
  System s = bench();
  const Fill f = fill(s, kCharged, kWanted);
  ASSERT_TRUE(f.time_per_tenth_psi);
  s.air.set_pressure = s.air.set_pressure + psi(0.1);
  s.air.droop = s.air.droop * in_pascals(bench().air.set_pressure) / in_pascals(s.air.set_pressure);
  EXPECT_NEAR(in_seconds(fill(s, kCharged, kWanted).time - f.time), in_seconds(*f.time_per_tenth_psi),
              0.02 * in_seconds(f.time));
  EXPECT_LT(in_seconds(*f.time_per_tenth_psi), 0.0);
}

TEST(Sensitivity, RepeatabilityAndOldPipeWidenTheRange) {
  System s = bench();
  const Fill narrow = fill(s, kCharged, kWanted);
  s.air.repeatability = pascals(1000.0);
  const Fill wide = fill(s, kCharged, kWanted);
  EXPECT_EQ(wide.time, narrow.time);
  EXPECT_LT(wide.time_low, narrow.time_low);
  EXPECT_GT(wide.time_high, narrow.time_high);
  std::vector<hydraulics::LineElement> elements = s.line.elements();
  elements.front().used_roughness = millimetres(1.5);
  s.line = hydraulics::Line(elements, s.line.first_end(), s.line.last_end());
  const Fill old = fill(s, kCharged, kWanted);
  EXPECT_EQ(old.time_low, wide.time_low);
  EXPECT_GT(old.time_high, wide.time_high);
  // Where the lower setting does not reach the depth, there is no end to the range.
  s.air.set_pressure = gauge_pascals(in_pascals(narrow.pressure_to_finish) + 900.0);
  EXPECT_TRUE(std::isinf(in_seconds(fill(s, kCharged, kWanted).time_high)));
  s.air.set_pressure = gauge_pascals(in_pascals(narrow.pressure_to_finish) + 1100.0);
  EXPECT_FALSE(std::isinf(in_seconds(fill(s, kCharged, kWanted).time_high)));
}

TEST(Input, WhatIsNoSystemIsSaidAllAtOnce) {
  System s = bench();
  s.reservoir.length = metres(0.0);
  s.table.rim = metres(-0.1);
  s.line = hydraulics::Line();
  Start start = kCharged;
  start.table_depth = metres(std::nan(""));
  try {
    fill(s, start, kWanted);
    FAIL() << "no error";
  } catch (const quantity::InputError& error) {
    std::vector<std::string> messages;
    for (const quantity::Problem& problem : error.problems()) messages.push_back(problem.message);
    EXPECT_THAT(messages, testing::ElementsAre("the reservoir's area must be more than zero",
                                               "the table's rim must be more than zero",
                                               "the depth in the table must not be less than zero",
                                               "the line must have at least one element"));
  }
}

TEST(Input, AWantedDepthThatIsNoneIsRefused) {
  EXPECT_THROW(fill(bench(), kCharged, metres(-0.01)), quantity::InputError);
  EXPECT_THROW(fill(bench(), kCharged, metres(std::nan(""))), quantity::InputError);
}

TEST(Input, ALineThatTakesNoHeadIsRefused) {
  System s = bench();
  hydraulics::LineElement nothing;
  nothing.name = "nothing";
  nothing.bore = metres(0.02);
  s.line = hydraulics::Line({nothing}, {0.0, 0.0, 0.0, ""}, {0.0, 0.0, 0.0, ""});
  EXPECT_THROW(fill(s, kCharged, kWanted), quantity::InputError);
}

}  // namespace
}  // namespace riserun::transfer
