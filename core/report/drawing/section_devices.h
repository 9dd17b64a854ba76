// What stands on the reservoir in its section: bungs where the map of the lid has them, and the runs that end in the
// open or in a device, and the one that comes from the air supply, drawn to scale as everywhere.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::report {

/// What a thing takes of the lid's length; metres.
struct Along {
  double from = 0.0;
  double to = 0.0;
};

/// Metres, from the inside of the left end and the inside floor. The riser's bung and the line to the table are not
/// among them. What the job gives no place stands where it covers nothing; what has a place may be seen from behind.
/// @param line  what the line to the table takes, which is to be kept clear
std::vector<Shape> devices_on(const plan::Plan& plan, const Along& line);

/// Where the bung in the lid stands along the length; nothing: it has no place.
std::optional<double> along_lid(const plan::Plan& plan, const std::string& port);

}  // namespace riserun::report
