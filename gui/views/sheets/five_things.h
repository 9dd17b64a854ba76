// What a job cannot do without, asked in a list and in an elevation to scale whose dimensions are the same fields.
#pragma once

#include "gui/views/sheets/measurements_sheet.h"

namespace riserun::views {

Requests draw_five_things(const Scene& scene, MeasurementsState& state);

}  // namespace riserun::views
