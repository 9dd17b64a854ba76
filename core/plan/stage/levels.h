// Levels and volumes: the charge, what the table needs, what the riser leaves behind, what the rim holds.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Off an open table indoors, by its area: evaporation of still water in a warm dry shop, 3 to 7 mm a day, and what
/// work carries and splashes off (common practice).
inline const Length kEvaporationADay = millimetres(5.0);
inline const Length kSplashADay = millimetres(2.0);

/// Of the charge, down to the dip of the surface over the riser's end at that height above the floor.
Volume usable_water(const reservoir::Box& box, const Levels& levels, Length riser_end);

/// What the table and the line take.
Volume water_of_a_fill(const Levels& levels);

/// @param water the connection from the riser to the table; nullptr: there is none
Levels plan_levels(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                   const ConnectionPlan* water, Remarks& remarks);

}  // namespace riserun::plan
