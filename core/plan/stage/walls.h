// The walls: the panels, what air pressure they may see, what one more row of stays would give and how close stays must
// stand; the factors of safety at the setting and with the regulator failed; loads, welds and vacuum.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"
#include "reservoir/stay_spacing.h"

#include <optional>
#include <vector>

namespace riserun::plan {

/// Cropped corners of a baffle in a small reservoir: 1 to 1-1/2 in at the floor, 1/2 to 3/4 in at the lid (common
/// practice). At the floor they take twice the riser's bore, so that the water keeps level (common practice).
inline const Length kPassageAtFloor = inches(1.5);
inline const Length kPassageAtLid = inches(0.75);
inline constexpr double kPassageOverRiser = 2.0;

/// What the walls may see, whatever the setting.
struct WallLimit {
  std::vector<reservoir::Panel> panels;
  GaugePressure limit;
  GaugePressure four_to_one;  // at which the factor on yield is reservoir::kAirLiftFactor
  std::optional<NextStay> next_stay;
};

/// Of the job's baffles: given by the job as being there, or assumed; nullopt: there are no baffles, or tight ones.
std::optional<Passages> find_passages(const Inputs& inputs, Length riser_bore, Remarks& remarks);

/// The job's reservoir is welded shut, and its supports are taken to be inside already.
bool are_shut_in(const Inputs& inputs);

/// Through bars that stand on the floor, which would dam the water: assumed where the job does not say that nothing
/// passes. Each bar is made that much higher, so that it carries what it did.
void add_mouse_holes(const Inputs& inputs, Length riser_bore, WallsPlan& walls, Remarks& remarks);

/// @param charge depth of the water that stands on the floor and the sides
WallLimit find_wall_limit(const Inputs& inputs, Length charge, Remarks& remarks);

/// What the walls see, apart from a failure.
struct WallLoad {
  Length charge{};
  GaugePressure setting;
  GaugePressure in_use;            // the setting, or what a relief valve of the job lets it come to
  bool riser_lets_air_in = false;  // nothing can shut the water's way, by which a vacuum breaks
};

/// What mends walls that do not stand what the fill needs: one more row of stays where that is enough, else stays as
/// close as will do; and thicker sheet.
void mend_weak_walls(const Inputs& inputs, const WallLoad& load, const WallLimit& limit, Finding& finding);

/// The walls at the setting and at full supply.
WallsPlan plan_walls(const Inputs& inputs, const WallLimit& limit, const WallLoad& load, Remarks& remarks);

}  // namespace riserun::plan
