// Where what stands on the lid has its place along it: where the plan has it, as nearly as words leave room.
#pragma once

#include "gui/model/canvas/layout.h"
#include "plan/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// Something that stands on the lid, and what it takes on both sides of its axis; points.
struct LidStand {
  float wanted = 0.0F;
  float left = 0.0F;
  float right = 0.0F;
};

/// Axes, each as near to where it is wanted as the others let it (least squares): none covers another, and as long as
/// there is room all of them stay between the two bounds. Those that are wanted at one place keep their order.
std::vector<float> places_on_lid(const std::vector<LidStand>& stands, float low, float high);

/// How far along the reservoir's inside that port of the lid stands, 0 to 1; none: no place is known.
std::optional<float> share_of_lid(const plan::Plan& plan, const std::string& port);

/// A place along the tank: its share of the inside length, and where it is drawn as a share of the drawn length.
struct DrawnPlace {
  float share = 0.0F;
  float drawn = 0.0F;
};

/// Where something else is drawn, so that it stands between the same bungs as in the tank though words move these: in
/// between, in proportion. Where the bungs are drawn in another order than they stand, at its own share.
/// @param bungs  of the lid, in any order
float drawn_between(std::vector<DrawnPlace> bungs, float share);

/// Half of what is drawn of a bung across its axis, and of the riser; points.
/// @param layout  whose parts it is drawn to the scale of; of rows, whose vessels are small, to the scale of these
float half_of_bung(const plan::Plan& plan, const Layout& layout, const std::string& port);
float half_of_riser(const plan::Plan& plan, const Layout& layout);

}  // namespace riserun::gui
