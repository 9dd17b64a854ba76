// Where the water comes into the table, and the way that leads there from under it: through the floor, or outside past
// the table's end and in by its wall, or over its rim.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

#include <vector>

namespace riserun::report {

/// Of a port of the table; metres over the table's inside floor.
struct Inlet {
  plan::Place place = plan::Place::floor;
  double height = 0.0;  // of its axis; of a pipe over the rim of its highest point
  double mouth = 0.0;   // where the water leaves it
  bool outside() const { return place == plan::Place::side || place == plan::Place::over_rim; }
};

/// As the job says; what it leaves out of a pipe over the rim as the plan assumes it: one bore over the rim, its mouth
/// at its highest point.
Inlet inlet_at(const plan::Plan& plan, const plan::JobPort& port);

/// Of the port that the water's line ends at; without one the floor.
Inlet water_inlet(const plan::Plan& plan);

/// The table as it is drawn, its inside; metres.
struct TableFrame {
  double left = 0.0, right = 0.0, floor = 0.0, rim = 0.0;
  double wall = 0.0;  // thickness of floor and walls as drawn
};

/// Axis of the line from a spot under the table to an inlet that is not in its floor, with square corners: up, out
/// under the floor past the table's right end, up to the inlet's height and back to it, just outside the wall.
/// @param half  of the line's outside diameter
std::vector<Spot> way_outside(const Inlet& inlet, const TableFrame& table, const Spot& from, double half);

/// Axis of what is the table's own: from where the line ends through the wall, or over the rim and down to its mouth.
std::vector<Spot> way_inside(const Inlet& inlet, const TableFrame& table, double half);

/// The way with its corners rounded, as closely as the pieces between them let it.
std::vector<Spot> rounded(const std::vector<Spot>& way, double radius);

/// The same way so far to the left of it, as one goes along: an edge of the pipe.
std::vector<Spot> beside(const std::vector<Spot>& way, double by);

}  // namespace riserun::report
