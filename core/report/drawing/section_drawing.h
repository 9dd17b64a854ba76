// The reservoir, the table over it and what joins them, cut open, to scale.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

#include <vector>

namespace riserun::report {

/// The whole, with the levels and the pressure of that instant. Heights are true; where a job does not say where a
/// thing stands along the reservoir (the bung, the table), it is drawn where there is room.
/// @param devices  as section_devices has them, kept from one instant to the next; nullptr: worked out anew
Drawing section_drawing(const plan::Plan& plan, const transfer::Instant& now, UnitSystem units,
                        const std::vector<Shape>* devices = nullptr);

/// What stands on the reservoir, which no instant changes.
std::vector<Shape> section_devices(const plan::Plan& plan);

/// The same for the bench, the water down: with the levels to mark, the riser's cut length and the breadths.
Drawing section_sheet_drawing(const plan::Plan& plan, UnitSystem units);

/// The riser's lower end and the floor under it, close up.
Drawing riser_end_drawing(const plan::Plan& plan, const transfer::Instant& now, UnitSystem units);

}  // namespace riserun::report
