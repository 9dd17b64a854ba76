#include "report/drawing/timeline.h"

#include "report/drawing/plot_drawing.h"
#include "report/drawing/plot_series.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::report {
namespace {

TEST(Timeline, ShowsTheSlowerCourseAndMarksTheNominalEnd) {
  const Timeline timeline = timeline_of(plan::bevel_bench());
  EXPECT_EQ(timeline.fill_shown, plan::bevel_bench().transfer.fill.time_high);
  EXPECT_EQ(timeline.drain_shown, plan::bevel_bench().transfer.drain.time_high);
  ASSERT_EQ(timeline.marks.size(), 2u);
  EXPECT_EQ(timeline.marks[0].at, plan::bevel_bench().transfer.fill.time);
  EXPECT_EQ(timeline.marks[0].text, "table at its depth");
  EXPECT_FALSE(timeline.marks[0].warning);
}

TEST(Timeline, MarksWhereATransferEndsBeforeItsGoal) {
  const plan::Plan weak = plan::plan_of_example("air-too-weak");
  ASSERT_EQ(weak.transfer.fill.stop, transfer::Stop::pressures_balance);
  const Timeline timeline = timeline_of(weak);
  ASSERT_FALSE(timeline.marks.empty());
  EXPECT_EQ(timeline.marks[0].text, "pressures balance");
  EXPECT_TRUE(timeline.marks[0].warning);
}

TEST(Timeline, CallsNoTableDrainedThatKeepsMostOfItsWater) {
  const plan::Plan plan = plan::plan_of_text(plan::with(plan::kBench, "inlet: {port: 1 FNPT, where: floor}",
                                                        "inlet: {port: 1 FNPT, where: side, opens at: 3 in}"));
  ASSERT_GT(plan.transfer.left_in_table, plan.transfer.fill.volume * 0.5);
  const Timeline timeline = timeline_of(plan);
  ASSERT_EQ(timeline.marks.size(), 2u);
  EXPECT_EQ(timeline.marks[1].text, "no more runs back");
  EXPECT_TRUE(timeline.marks[1].warning);
}

TEST(InstantAt, IsThePlansOwnAtItsInstantsAndBetweenThemBetween) {
  const auto& history = plan::bevel_bench().transfer.fill.history;
  const Timeline timeline = timeline_of(plan::bevel_bench());
  for (std::size_t i = 1; i < history.size(); ++i) {
    EXPECT_EQ(instant_at(plan::bevel_bench(), timeline, history[i].time).table_depth, history[i].table_depth);
    const Time middle = (history[i - 1].time + history[i].time) / 2.0;
    const transfer::Instant between = instant_at(plan::bevel_bench(), timeline, middle);
    EXPECT_GE(between.reservoir_depth, history[i].reservoir_depth);
    EXPECT_LE(between.reservoir_depth, history[i - 1].reservoir_depth);
  }
}

TEST(InstantAt, RestsAfterTheEndOfTheFillUntilTheDrainBegins) {
  const Timeline timeline = timeline_of(plan::bevel_bench());
  const Time after = (plan::bevel_bench().transfer.fill.time + timeline.fill_shown) / 2.0;
  const transfer::Instant resting = instant_at(plan::bevel_bench(), timeline, after);
  EXPECT_EQ(resting.table_depth, plan::bevel_bench().transfer.fill.table_depth);
  EXPECT_EQ(resting.flow, VolumeFlow{});
  EXPECT_EQ(phase_at(timeline, after), Phase::fill);
  EXPECT_EQ(phase_at(timeline, timeline.fill_shown), Phase::drain);
  EXPECT_LT(instant_at(plan::bevel_bench(), timeline, timeline.whole()).table_depth, resting.table_depth);
}

TEST(Plot, HoldsTheCurveInsideItsBand) {
  const Timeline timeline = timeline_of(plan::bevel_bench());
  for (const Quantity quantity : {Quantity::flow, Quantity::levels, Quantity::air_pressure}) {
    const Plot plot = plot_of(plan::bevel_bench(), timeline, quantity, UnitSystem::metric);
    bool has_width = false;
    for (const PlotSeries& series : plot.series) {
      ASSERT_GT(series.points.size(), 100u);
      for (std::size_t i = 0; i < series.points.size(); ++i) {
        const PlotPoint& point = series.points[i];
        EXPECT_LE(point.low, point.value);
        EXPECT_GE(point.high, point.value);
        EXPECT_GE(point.low, plot.least);
        EXPECT_LE(point.high, plot.most);
        EXPECT_GE(point.time, series.points[i == 0 ? 0 : i - 1].time);
        has_width = has_width || point.high > point.low;
      }
    }
    EXPECT_TRUE(has_width) << plot.title;
  }
}

TEST(Plot, OfTheFlowFallsStraightDownWhereTheFillEnds) {
  const plan::Plan& plan = plan::bevel_bench();
  const Plot plot = plot_of(plan, timeline_of(plan), Quantity::flow, UnitSystem::inch);
  const double end = in_seconds(plan.transfer.fill.time);
  const std::vector<PlotPoint>& points = plot.series[0].points;
  const auto after =
      std::find_if(points.begin(), points.end(), [&](const PlotPoint& p) { return p.time > end + 1e-9; });
  ASSERT_NE(after, points.end());
  EXPECT_EQ(after->value, 0.0);
  EXPECT_LT(after->time, end + 0.01);
  EXPECT_GT((after - 1)->value, 1.0);
}

TEST(Plot, ReadsInTheUnitsAskedFor) {
  const Timeline timeline = timeline_of(plan::bevel_bench());
  const Plot pressure = plot_of(plan::bevel_bench(), timeline, Quantity::air_pressure, UnitSystem::inch);
  ASSERT_EQ(pressure.levels.size(), 2U);
  EXPECT_NEAR(pressure.levels[0].value, in_psi(plan::bevel_bench().transfer.system.air.set_pressure), 1e-9);
  EXPECT_FALSE(pressure.levels[0].warning);
  EXPECT_NEAR(pressure.levels[1].value, in_psi(plan::bevel_bench().walls.limit), 1e-9);
  EXPECT_TRUE(pressure.levels[1].warning);
  EXPECT_GE(pressure.most, pressure.levels[1].value);
  const Plot inch = plot_of(plan::bevel_bench(), timeline, Quantity::levels, UnitSystem::inch);
  const Plot metric = plot_of(plan::bevel_bench(), timeline, Quantity::levels, UnitSystem::metric);
  EXPECT_EQ(inch.unit, "in");
  EXPECT_EQ(metric.unit, "mm");
  EXPECT_NEAR(inch.series[0].points[0].value, 8.5, 1e-9);
  EXPECT_NEAR(metric.series[0].points[0].value, 8.5 * 25.4, 1e-9);
}

// The words at a level are a tenth of the plot high at most; no line of the grid goes through them.
TEST(Plot, PutsTheWordsOfALevelWhereTheGridLeavesThemFree) {
  const Timeline timeline = timeline_of(plan::bevel_bench());
  const Plot pressure = plot_of(plan::bevel_bench(), timeline, Quantity::air_pressure, UnitSystem::inch);
  const Drawing drawing = plot_drawing(pressure, timeline, 1.0, 1.0);
  int levels = 0;
  for (const Shape& shape : drawing.shapes) {
    const Label* label = std::get_if<Label>(&shape);
    if (label == nullptr || label->name != "level") continue;
    ++levels;
    const double low = label->up == Align::low ? label->at.y : label->at.y - 0.1;
    for (const Shape& other : drawing.shapes) {
      const Stroke* grid = std::get_if<Stroke>(&other);
      if (grid == nullptr || grid->name != "grid") continue;
      EXPECT_FALSE(grid->points[0].y > low + 1e-9 && grid->points[0].y < low + 0.1 - 1e-9) << label->text;
    }
  }
  EXPECT_EQ(levels, 2);
}

TEST(RoundStep, IsOneTwoOrFiveTimesAPowerOfTen) {
  EXPECT_DOUBLE_EQ(round_step(10.0, 5), 2.0);
  EXPECT_DOUBLE_EQ(round_step(9.0, 5), 2.0);
  EXPECT_DOUBLE_EQ(round_step(0.13, 4), 0.05);
  EXPECT_DOUBLE_EQ(round_step(700.0, 4), 200.0);
  EXPECT_DOUBLE_EQ(round_step(0.0, 4), 1.0);
}

}  // namespace
}  // namespace riserun::report
