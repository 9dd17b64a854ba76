// What is true of every transfer, whatever the shop.
#include "property/transfer/random_systems.h"
#include "transfer/integrate.h"

#include <gtest/gtest.h>

namespace riserun::transfer {
namespace {

constexpr int kJobs = 40;

Course run_of(const System& system, const Start& start, Task task, Length wanted, double tolerance = 1.0e-9) {
  const Equations e(system, start, task);
  RunOptions options;
  options.task = task;
  options.goal_table = in_square_metres(system.table.free_area()) * in_metres(wanted);
  options.tolerance = tolerance;
  return run(e, options);
}

void expect_conserved(const System& system, const Start& start, Task task, Length wanted) {
  const Equations e(system, start, task);
  const Course r = run_of(system, start, task, wanted);
  const double water = e.start_water + e.start_line + e.start_table;
  double before = 0.0;
  for (const PathPoint& point : r.path) {
    const double reservoir = e.reservoir_area * e.reservoir_level(point.state.water);
    const double sum = reservoir + point.books.line + point.books.table + point.books.spilled;
    EXPECT_NEAR(sum, water, 1.0e-9 * water);
    // The air that the pressure tells of is what was there, and came, and went.
    const double room = in_cubic_metres(system.reservoir.capacity()) - reservoir;
    const double air = point.pressure * room / e.gas;
    const double expected = e.start_air + point.state.regulated - point.state.vented;
    EXPECT_NEAR(air, expected, 1.0e-9 * (e.start_air + point.state.regulated));
    if (e.supply == Equations::Supply::receiver) {
      const double receiver = e.receiver_pressure(point.state) * e.receiver_volume / e.gas;
      EXPECT_NEAR(receiver, e.receiver_start + point.state.compressed - point.state.regulated,
                  1.0e-9 * e.receiver_start);
      EXPECT_LE(receiver, e.receiver_stop * (1.0 + 1.0e-9));
    }
    EXPECT_GE(point.time, before);
    EXPECT_GE(point.books.line, -1.0e-12);
    EXPECT_LE(point.books.table, e.rim_volume * (1.0 + 1.0e-12));
    before = point.time;
  }
}

TEST(TransferProperties, WaterAndAirAreConserved) {
  RandomShop shop(1);
  for (int i = 0; i < kJobs; ++i) {
    const RandomJob job = shop.everyday();
    expect_conserved(job.system, job.fill_start, Task::fill, job.wanted);
    expect_conserved(job.system, job.drain_start, Task::drain, {});
  }
}

TEST(TransferProperties, ReportedAirFillsTheRoomThatTheWaterLeft) {
  RandomShop shop(2);
  for (int i = 0; i < 10; ++i) {
    const RandomJob job = shop.everyday();
    const System& s = job.system;
    const Fill f = fill(s, job.fill_start, job.wanted);
    const auto at_the_atmosphere = [&](Length depth, GaugePressure pressure) {
      return in_cubic_metres(s.reservoir.capacity() - s.reservoir.volume_at(depth)) *
             (in_pascals(absolute(pressure, s.atmosphere)) / in_pascals(s.atmosphere));
    };
    const double gained = at_the_atmosphere(f.reservoir_depth, f.history.back().ullage_pressure) -
                          at_the_atmosphere(job.fill_start.reservoir_depth, {});
    EXPECT_NEAR(in_cubic_metres(f.free_air), gained, 1.0e-9 * in_cubic_metres(s.reservoir.capacity()));
    const Volume out = s.reservoir.volume_at(job.fill_start.reservoir_depth - f.reservoir_depth);
    EXPECT_NEAR(in_cubic_metres(out), in_cubic_metres(f.volume), 1.0e-9 * in_cubic_metres(out));
    EXPECT_LE(in_cubic_metres(s.table.volume_at(f.table_depth)), in_cubic_metres(f.volume) * (1.0 + 1.0e-9));
    EXPECT_GE(in_cubic_metres(s.table.volume_at(f.table_depth) + s.line.volume()),
              in_cubic_metres(f.volume) * (1.0 - 1.0e-9));
  }
}

TEST(TransferProperties, AHigherSettingIsNeverSlower) {
  RandomShop shop(3);
  for (int i = 0; i < kJobs; ++i) {
    RandomJob job = shop.everyday();
    const Course before = run_of(job.system, job.fill_start, Task::fill, job.wanted);
    job.system.air.set_pressure = gauge_pascals(in_pascals(job.system.air.set_pressure) * shop.between(1.01, 2.0));
    const Course after = run_of(job.system, job.fill_start, Task::fill, job.wanted);
    if (before.stop != Stop::goal_reached) continue;
    EXPECT_EQ(after.stop, Stop::goal_reached);
    EXPECT_LE(after.time, before.time * (1.0 + 1.0e-6));
  }
}

System with_wider_line(System s, double factor) {
  std::vector<hydraulics::LineElement> elements = s.line.elements();
  for (hydraulics::LineElement& element : elements) element.bore *= factor;
  s.line = hydraulics::Line(elements, s.line.first_end(), s.line.last_end());
  return s;
}

TEST(TransferProperties, AWiderLineIsNeverSlower) {
  RandomShop shop(4);
  for (int i = 0; i < kJobs; ++i) {
    RandomJob job = shop.everyday();
    // A wider line holds more water: to compare like with like, begin with the line full.
    if (job.system.inlet_height >= job.wanted) continue;
    const Start covered{job.fill_start.reservoir_depth, job.system.inlet_height + millimetres(0.1),
                        job.drain_start.ullage_pressure};
    const System wider = with_wider_line(job.system, shop.between(1.02, 1.6));
    for (const Task task : {Task::fill, Task::drain}) {
      const Start& start = task == Task::fill ? covered : job.drain_start;
      const Course before = run_of(job.system, start, task, job.wanted);
      const Course after = run_of(wider, start, task, job.wanted);
      if (before.stop != Stop::goal_reached || before.time <= 0.0) continue;
      EXPECT_EQ(after.stop, Stop::goal_reached);
      EXPECT_LE(after.time, before.time * (1.0 + 1.0e-6));
    }
  }
}

TEST(TransferProperties, HalfTheToleranceChangesNothingVisible) {
  RandomShop shop(5);
  for (int i = 0; i < kJobs; ++i) {
    const RandomJob job = shop.everyday();
    for (const Task task : {Task::fill, Task::drain}) {
      const Start& start = task == Task::fill ? job.fill_start : job.drain_start;
      const Course coarse = run_of(job.system, start, task, job.wanted, 1.0e-9);
      const Course fine = run_of(job.system, start, task, job.wanted, 0.5e-9);
      EXPECT_EQ(coarse.stop, fine.stop);
      EXPECT_NEAR(coarse.time, fine.time, 1.0e-6 * fine.time + 1.0e-6);
      EXPECT_NEAR(coarse.state.water, fine.state.water, 1.0e-7 * std::abs(fine.state.water) + 1.0e-9);
    }
  }
}

TEST(TransferProperties, ShutAtTheMarkTheTableComesToRestAtItsDepth) {
  RandomShop shop(6);
  int tried = 0;
  for (int i = 0; i < 15; ++i) {
    RandomJob job = shop.everyday();
    const Fill f = fill(job.system, job.fill_start, job.wanted);
    if (f.stop != Stop::goal_reached || f.shut_off_depth <= job.system.inlet_height) continue;
    const Course to_mark = run_of(job.system, job.fill_start, Task::fill, f.shut_off_depth);
    ASSERT_EQ(to_mark.stop, Stop::goal_reached);
    System shut = job.system;
    shut.air.set_pressure = gauge_pascals(0.0);
    const Start start{metres(in_metres(job.fill_start.reservoir_depth) -
                             to_mark.state.water / in_square_metres(shut.reservoir.free_area())),
                      f.shut_off_depth, gauge_pascals(to_mark.path.back().pressure - in_pascals(shut.atmosphere))};
    const Course rest = run_of(shut, start, Task::fill, shut.table.rim);
    EXPECT_EQ(rest.stop, Stop::pressures_balance);
    EXPECT_NEAR(in_metres(shut.table.depth_at(cubic_metres(rest.books.table))), in_metres(job.wanted), 1.5e-4);
    ++tried;
  }
  EXPECT_GE(tried, 8);
}

TEST(TransferProperties, CoastUpIsWhatTheShutUllageDoes) {
  RandomShop shop(7);
  int tried = 0;
  for (int i = 0; i < 15; ++i) {
    RandomJob job = shop.everyday();
    const Fill f = fill(job.system, job.fill_start, job.wanted);
    if (f.stop != Stop::goal_reached) continue;
    System shut = job.system;
    shut.air.set_pressure = gauge_pascals(0.0);
    const Start start{f.reservoir_depth, f.table_depth, f.history.back().ullage_pressure};
    const Course rest = run_of(shut, start, Task::fill, shut.table.rim * 2.0);
    EXPECT_NEAR(in_metres(shut.table.depth_at(cubic_metres(rest.books.table))), in_metres(f.table_depth + f.coast_up),
                1.5e-4);
    ++tried;
  }
  EXPECT_GE(tried, 8);
}

TEST(TransferProperties, TheRangeHoldsTheTime) {
  RandomShop shop(8);
  for (int i = 0; i < 15; ++i) {
    const RandomJob job = shop.everyday();
    const Fill f = fill(job.system, job.fill_start, job.wanted);
    const Drain d = drain(job.system, job.drain_start);
    for (const Transfer* t : {static_cast<const Transfer*>(&f), static_cast<const Transfer*>(&d)}) {
      if (t->stop != Stop::goal_reached) continue;
      EXPECT_LE(in_seconds(t->time_low), in_seconds(t->time) * (1.0 + 1.0e-6));
      EXPECT_GE(in_seconds(t->time_high), in_seconds(t->time) * (1.0 - 1.0e-6));
      for (const Limit& limit : t->limits) {
        EXPECT_LE(in_seconds(limit.time_without), in_seconds(t->time) * (1.0 + 1.0e-5)) << limit.name;
      }
    }
  }
}

TEST(TransferProperties, TheSettingForATimeTakesThatTime) {
  RandomShop shop(9);
  int found = 0;
  for (int i = 0; i < 6; ++i) {
    RandomJob job = shop.everyday();
    const Course r = run_of(job.system, job.fill_start, Task::fill, job.wanted);
    if (r.stop != Stop::goal_reached) continue;
    const Time wanted = seconds(r.time * shop.between(0.9, 1.5));
    const auto setting = setting_for_time(job.system, job.fill_start, job.wanted, wanted, bar_gauge(1.0));
    if (!setting) continue;
    job.system.air.set_pressure = *setting;
    const Course again = run_of(job.system, job.fill_start, Task::fill, job.wanted);
    EXPECT_EQ(again.stop, Stop::goal_reached);
    EXPECT_LE(again.time, in_seconds(wanted) * 1.001);
    const double lowest = in_pascals(fill(job.system, job.fill_start, job.wanted).pressure_to_finish);
    if (in_pascals(*setting) > 1.001 * lowest) {
      EXPECT_NEAR(again.time, in_seconds(wanted), 1.0e-3 * in_seconds(wanted));
    }
    ++found;
  }
  EXPECT_GE(found, 3);
}

TEST(TransferProperties, LeftAloneItEndsWhereTheStaticsSay) {
  RandomShop shop(10);
  int spilled = 0;
  for (int i = 0; i < 20; ++i) {
    const RandomJob job = shop.everyday();
    const Fill f = fill(job.system, job.fill_start, job.wanted);
    const Equations e(job.system, job.fill_start, Task::fill);
    RunOptions options;
    options.over_the_rim = true;
    const Course r = run(e, options);
    const bool blown = f.walk_away == WalkAway::air_blows_through;
    if (blown) {
      EXPECT_EQ(r.stop, Stop::riser_uncovered);
    }
    if (f.walk_away == WalkAway::water_stops_below_rim) {
      EXPECT_EQ(r.stop, Stop::pressures_balance);
    }
    const double creep = 1.0e-4 * e.table_area;
    EXPECT_NEAR(r.books.spilled, in_cubic_metres(f.walk_away_spill), creep);
    if (f.walk_away_spill > cubic_metres(0.0)) ++spilled;
  }
  EXPECT_GE(spilled, 3);
}

TEST(TransferProperties, AnySystemComesToAnEnd) {
  RandomShop shop(11);
  for (int i = 0; i < 60; ++i) {
    const RandomJob job = shop.wild();
    SCOPED_TRACE(i);
    for (const Task task : {Task::fill, Task::drain}) {
      const Course r = run_of(job.system, task == Task::fill ? job.fill_start : job.drain_start, task, job.wanted);
      EXPECT_TRUE(std::isfinite(r.time) && std::isfinite(r.state.water) && std::isfinite(r.peak_flow));
      EXPECT_LE(r.time, 86400.0);
      EXPECT_LT(r.steps, 60000u);
      for (const PathPoint& point : r.path) {
        ASSERT_TRUE(std::isfinite(point.pressure) && std::isfinite(point.water_flow) && std::isfinite(point.air_flow));
      }
    }
  }
}

}  // namespace
}  // namespace riserun::transfer
