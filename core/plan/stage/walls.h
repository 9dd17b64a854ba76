// The walls: the panels, what air pressure they may see, what one more row of stays would give; and the factors of
// safety at the setting and with the regulator failed.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>
#include <vector>

namespace riserun::plan {

/// Cropped corners of a baffle in a small reservoir: 1 to 1-1/2 in at the floor, 1/2 to 3/4 in at the lid (common
/// practice).
inline const Length kPassageAtFloor = inches(1.5);
inline const Length kPassageAtLid = inches(0.75);

/// What the walls may see, whatever the setting.
struct WallLimit {
  std::vector<reservoir::Panel> panels;
  GaugePressure limit;
  GaugePressure four_to_one;  // at which the factor on yield is reservoir::kAirLiftFactor
  std::optional<NextStay> next_stay;
};

/// @param charge depth of the water that stands on the floor and the sides
WallLimit find_wall_limit(const Inputs& inputs, Length charge, Remarks& remarks);

/// The walls at the setting and at full supply.
WallsPlan plan_walls(const Inputs& inputs, const WallLimit& limit, GaugePressure setting, Remarks& remarks);

}  // namespace riserun::plan
