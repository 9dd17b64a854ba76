// Tank and table from the front, to scale, of what is known of them so far: what is not is drawn in usual proportions
// and with broken lines.
#pragma once

#include "report/drawing/drawing.h"
#include "report/drawing/inlet.h"

#include <optional>
#include <vector>

namespace riserun::report {

/// Metres; inside measures.
struct Elevation {
  std::optional<double> tank_length;
  std::optional<double> tank_height;
  std::optional<double> table_length;
  std::optional<double> water_depth;   // wanted in the table
  std::optional<double> floor_height;  // of the table over the tank's inside floor
  int baffles = 0;                     // across the length
  Inlet inlet;                         // of the water's line
  std::vector<Shape> stays;            // besides the baffles, as stay_shapes has them
};

/// The same with usual proportions for what is not known.
struct ElevationFrame {
  double tank_left = 0.0, tank_right = 0.0, tank_top = 0.0;  // its inside floor is at 0
  double table_left = 0.0, table_right = 0.0, table_floor = 0.0, water_top = 0.0, rim = 0.0;
  double right = 0.0, top = 0.0;  // of all that is drawn of the two and of the line between them
  bool tank_known = false;
  bool table_known = false;
};
ElevationFrame frame_of(const Elevation& known);

Drawing elevation_drawing(const Elevation& known);

}  // namespace riserun::report
