#include "report/drawing/elevation.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

// Proportions of a usual bench (common practice), for what is not known yet.
constexpr double kUsualLength = 1.2;        // m
constexpr double kUsualTankHeight = 0.33;   // m
constexpr double kUsualFloorHeight = 0.76;  // m
constexpr double kUsualDepth = 0.09;        // m
constexpr double kLeastClearance = 0.2;     // m between lid and table
constexpr double kRimOverWater = 1.4;       // the drawn rim, times the water's depth
constexpr double kWall = 0.008;             // m, as drawn

/// Walls round a box, its upper side open or not: broken lines where its measures are not known.
void walls(Drawing& drawing, const std::string& name, double left, double bottom, double right, double top, bool open,
           bool known) {
  std::vector<Spot> line = {{left, top}, {left, bottom}, {right, bottom}, {right, top}};
  if (!open) line.push_back({left, top});
  drawing.shapes.push_back(
      Stroke{name, std::move(line), Ink::sheet_metal, known ? 3.0F : 1.5F, known ? Line::full : Line::hidden});
}

/// It stands in a bay near the middle and ends short of the floor; above it the line goes to the table's inlet.
Stroke riser_of(const Elevation& known, const ElevationFrame& f) {
  const double bay = (f.tank_right - f.tank_left) / (known.baffles + 1);
  const double x = f.tank_left + (static_cast<double>(known.baffles / 2) + 0.5) * bay;
  Stroke riser{"riser", {{x, f.tank_top * 0.1}, {x, f.table_floor}}, Ink::part_edge, 4.0F};
  if (!known.inlet.outside()) return riser;
  constexpr double kHalf = 0.012;  // m, of the line as drawn
  const TableFrame table{f.table_left, f.table_right, f.table_floor, f.rim, kWall};
  riser.points = way_outside(known.inlet, table, riser.points.front(), kHalf);
  const std::vector<Spot> inside = way_inside(known.inlet, table, kHalf);
  riser.points.insert(riser.points.end(), inside.begin() + 1, inside.end());
  return riser;
}

}  // namespace

ElevationFrame frame_of(const Elevation& known) {
  ElevationFrame frame;
  const double tank = known.tank_length.value_or(known.table_length.value_or(kUsualLength));
  const double table = known.table_length.value_or(tank);
  frame.tank_right = tank;
  frame.tank_top = known.tank_height.value_or(
      std::min(kUsualTankHeight, known.floor_height ? *known.floor_height * 0.45 : kUsualTankHeight));
  frame.table_left = (tank - table) / 2.0;
  frame.table_right = frame.table_left + table;
  frame.table_floor = known.floor_height.value_or(std::max(kUsualFloorHeight, frame.tank_top + kLeastClearance));
  frame.water_top = frame.table_floor + known.water_depth.value_or(kUsualDepth);
  frame.rim = frame.table_floor + kRimOverWater * (frame.water_top - frame.table_floor);
  frame.tank_known = known.tank_length && known.tank_height;
  frame.table_known = known.table_length && known.floor_height;
  frame.right = std::max(frame.tank_right, frame.table_right);
  frame.top = frame.rim;
  for (const Spot& spot : riser_of(known, frame).points) {
    frame.right = std::max(frame.right, spot.x);
    frame.top = std::max(frame.top, spot.y);
  }
  return frame;
}

Drawing elevation_drawing(const Elevation& known) {
  const ElevationFrame f = frame_of(known);
  Drawing drawing;
  drawing.low = {std::min(f.tank_left, f.table_left) - kWall, -kWall};
  drawing.high = {std::max(f.tank_right, f.table_right) + kWall, f.rim};
  if (known.water_depth)
    drawing.shapes.push_back(
        Area{"water", box_outline(f.table_left, f.table_floor, f.table_right, f.water_top), Ink::water_pale, 1.0F, {}});
  walls(drawing, "tank", f.tank_left, 0.0, f.tank_right, f.tank_top, false, f.tank_known);
  walls(drawing, "table", f.table_left, f.table_floor, f.table_right, f.rim, true, f.table_known);
  for (int i = 1; i <= known.baffles; ++i) {
    const double x = f.tank_left + (f.tank_right - f.tank_left) * i / (known.baffles + 1);
    drawing.shapes.push_back(
        Stroke{fmt::format("baffle {}", i), {{x, 0.0}, {x, f.tank_top}}, Ink::sheet_metal, 1.5F, Line::hidden});
  }
  drawing.shapes.insert(drawing.shapes.end(), known.stays.begin(), known.stays.end());
  drawing.shapes.push_back(riser_of(known, f));
  drawing.high = {std::max(drawing.high.x, f.right), std::max(drawing.high.y, f.top)};
  return drawing;
}

}  // namespace riserun::report
