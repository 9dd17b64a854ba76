// The walls: the panels, what air pressure they may see, what one more row of stays would give; and the factors of
// safety at the setting and with the regulator failed.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>
#include <vector>

namespace riserun::plan {

/// What the walls may see, whatever the setting.
struct WallLimit {
  std::vector<reservoir::Panel> panels;
  GaugePressure limit;
  std::optional<NextStay> next_stay;
};

/// @param charge depth of the water that stands on the floor and the sides
WallLimit find_wall_limit(const Inputs& inputs, Length charge, Remarks& remarks);

/// The walls at the setting and at full supply.
WallsPlan plan_walls(const Inputs& inputs, const WallLimit& limit, GaugePressure setting, Remarks& remarks);

}  // namespace riserun::plan
