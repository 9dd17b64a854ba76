// One run of the equations: what it is asked, and the course that it took.
#pragma once

#include "transfer/equations.h"
#include "transfer/stop.h"

#include <optional>
#include <vector>

namespace riserun::transfer {

/// How a run ends and how exactly it is solved.
struct RunOptions {
  Task task = Task::fill;
  double goal_table = 0.0;    // m3 in the table that a fill is to reach
  double shut_off_air = 0.0;  // kg in the ullage from which the goal is reached with the air shut; marked
  bool over_the_rim = false;  // go on over the rim until all is at rest or the riser uncovers
  double tolerance = 1.0e-9;  // relative, of each step
  double longest = 86400.0;   // s
  bool keep_path = true;      // false: only the end
};

/// One accepted step.
struct PathPoint {
  double time;  // s
  State state;
  Books books;        // as of that time
  double water_flow;  // m3/s
  double air_flow;    // kg/s into the ullage
  double pressure;    // Pa absolute
};

struct Course {
  Stop stop = Stop::goal_reached;
  double time = 0.0;
  State state;
  Books books;
  double peak_flow = 0.0;                // m3/s, greatest of either direction
  double peak_pressure = 0.0;            // Pa absolute
  double arrival_flow = 0.0;             // m3/s when the water first reached the table's inlet
  std::optional<double> shut_off_table;  // m3 in the table when the mark was passed
  std::vector<PathPoint> path;
  std::size_t steps = 0;        // accepted
  std::size_t stiff_steps = 0;  // of them by the method for stiff equations
};

}  // namespace riserun::transfer
