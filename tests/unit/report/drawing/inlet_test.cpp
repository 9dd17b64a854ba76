// An inlet that is not in the table's floor is drawn as it is built: outside past the table's end.
#include "report/drawing/inlet.h"

#include "report/drawing/elevation.h"
#include "report/drawing/section_drawing.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::report {
namespace {

constexpr const char* kInFloor = "where: floor, opens at: 0 in, face height: 29-3/4 in";

plan::Plan with_inlet(const std::string& where) {
  return plan::plan_of_text(plan::with(plan::example_text("bevel-bench"), kInFloor, where));
}

std::vector<Spot> spots_of(const Drawing& drawing, const std::string& name) {
  std::vector<Spot> spots;
  for (const Shape& shape : drawing.shapes)
    if (const auto* stroke = std::get_if<Stroke>(&shape); stroke != nullptr && stroke->name == name)
      spots.insert(spots.end(), stroke->points.begin(), stroke->points.end());
  return spots;
}

/// The table's inside with its floor and walls.
struct Cut {
  explicit Cut(const plan::Plan& plan) {
    const double tank = in_metres(plan.job.reservoir.length);
    const double table = in_metres(plan.transfer.system.table.length);
    const double sheet = in_metres(plan.job.reservoir.sheet.thickness);
    left = (tank - table) / 2.0 - sheet;
    right = (tank + table) / 2.0;
    floor = in_metres(plan.transfer.system.table.floor_height);
    rim = floor + in_metres(plan.transfer.system.table.rim);
    under = floor - sheet;
    wall = right + sheet;
  }
  bool holds(const Spot& spot) const { return spot.x > left && spot.x < wall && spot.y > under && spot.y < rim; }
  double left, right, wall, floor, under, rim;
};

TEST(InletInTheSide, IsReachedFromOutsideAtItsHeight) {
  const plan::Plan plan = with_inlet("where: side, opens at: 3 in");
  const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
  const Cut cut(plan);
  const std::vector<Spot> hose = spots_of(drawing, "hose");
  ASSERT_FALSE(hose.empty());
  double out = 0.0;
  for (const Spot& spot : hose) {
    EXPECT_FALSE(cut.holds(spot)) << spot.x << ", " << spot.y;
    out = std::max(out, spot.x);
    EXPECT_LE(spot.x, drawing.high.x);
    EXPECT_LE(spot.y, drawing.high.y);
  }
  EXPECT_GT(out, cut.wall);
  const std::vector<Spot> inlet = spots_of(drawing, "inlet");
  ASSERT_FALSE(inlet.empty());
  double low = 1e9;
  double high = -1e9;
  for (const Spot& spot : inlet) {
    low = std::min(low, spot.y);
    high = std::max(high, spot.y);
  }
  EXPECT_NEAR((low + high) / 2.0, cut.floor + in_metres(inches(3.0)), 1e-9);
  EXPECT_TRUE(std::any_of(inlet.begin(), inlet.end(), [&](const Spot& spot) { return spot.x < cut.right; }));
}

TEST(InletOverTheRim, GoesOverItAtTheCrestAndDownToItsMouth) {
  const plan::Plan plan = with_inlet("where: over rim, opens at: 2 in, crest: 12 in");
  const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
  const Cut cut(plan);
  for (const Spot& spot : spots_of(drawing, "hose")) EXPECT_FALSE(cut.holds(spot)) << spot.x << ", " << spot.y;
  const std::vector<Spot> pipe = spots_of(drawing, "inlet");
  ASSERT_FALSE(pipe.empty());
  double low = 1e9;
  for (const Spot& spot : pipe) {
    low = std::min(low, spot.y);
    // What comes over the rim passes through no wall.
    EXPECT_FALSE(spot.x > cut.right && cut.holds(spot)) << spot.x << ", " << spot.y;
    EXPECT_LE(spot.y, drawing.high.y);
  }
  EXPECT_NEAR(low, cut.floor + in_metres(inches(2.0)), 1e-9);
  const double crest = cut.floor + in_metres(inches(12.0));
  const auto outside = [&](const Spot& spot) { return spot.x > cut.wall; };
  const auto first = std::find_if(pipe.begin(), pipe.end(), outside);
  ASSERT_NE(first, pipe.end());
  EXPECT_NEAR(first->y, crest, in_metres(plan.riser.request.pipe.outside_diameter));
}

TEST(InletInTheFloor, IsReachedStraightFromBelow) {
  const plan::Plan& plan = plan::bevel_bench();
  EXPECT_FALSE(water_inlet(plan).outside());
  EXPECT_TRUE(spots_of(section_drawing(plan, {}, UnitSystem::inch), "inlet").empty());
}

TEST(ElevationOfAnInlet, GoesRoundTheTable) {
  Elevation known;
  known.tank_length = known.table_length = 1.2;
  known.tank_height = 0.35;
  known.floor_height = 1.0;
  known.water_depth = 0.1;
  known.inlet = {plan::Place::over_rim, 0.2, 0.05};
  const Drawing drawing = elevation_drawing(known);
  const ElevationFrame frame = frame_of(known);
  const Stroke* riser = find_shape<Stroke>(drawing, "riser");
  ASSERT_NE(riser, nullptr);
  double right = 0.0;
  double top = 0.0;
  for (const Spot& spot : riser->points) {
    right = std::max(right, spot.x);
    top = std::max(top, spot.y);
  }
  EXPECT_GT(right, frame.table_right);
  EXPECT_NEAR(top, frame.table_floor + 0.2, 1e-9);
  EXPECT_NEAR(riser->points.back().y, frame.table_floor + 0.05, 1e-9);
  EXPECT_LT(riser->points.back().x, frame.table_right);
  EXPECT_GE(drawing.high.x, right);
  EXPECT_GE(drawing.high.y, top);
  // Nothing crosses the floor: no piece of the way goes up through it within the table.
  for (std::size_t i = 1; i < riser->points.size(); ++i) {
    const Spot& a = riser->points[i - 1];
    const Spot& b = riser->points[i];
    EXPECT_FALSE(a.x < frame.table_right && a.y < frame.table_floor && b.y > frame.table_floor);
  }
  known.inlet = {};
  const Drawing through = elevation_drawing(known);
  EXPECT_NEAR(find_shape<Stroke>(through, "riser")->points.back().y, frame.table_floor, 1e-9);
}

}  // namespace
}  // namespace riserun::report
