// What stands on the reservoir in its section: bungs where the map of the lid has them, and the runs that end in the
// open or in a device, drawn to scale as everywhere.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::report {

/// Metres, from the inside of the left end and the inside floor. The riser's bung and the line to the table are not
/// among them; of the air supply's run the bung alone is.
std::vector<Shape> devices_on(const plan::Plan& plan);

/// Where the bung in the lid stands along the length; nothing: it has no place.
std::optional<double> along_lid(const plan::Plan& plan, const std::string& port);

}  // namespace riserun::report
