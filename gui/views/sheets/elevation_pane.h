// Tank and table from the front, to scale; each dimension is the field that it is typed into.
#pragma once

#include "gui/views/sheets/measurements_sheet.h"
#include "report/drawing/elevation.h"

namespace riserun::views {

using report::Elevation;

/// What the job says of it, and of a field that is being typed into what stands there.
Elevation elevation_of(const Scene& scene, const MeasurementsState& state);

Requests draw_elevation(const Scene& scene, MeasurementsState& state, const PixelBox& box);

}  // namespace riserun::views
