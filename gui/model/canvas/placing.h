// Where vessels and runs stand at a given scale of the parts.
#pragma once

#include "gui/model/canvas/layout.h"

namespace riserun::gui {

/// @param scale  points a metre
Layout placed_at(const LayoutWish& wish, double scale);

/// What each connection joins: the side of the elevation at which its run stands.
enum class Zone {
  air,     // upright on the air supply, at the left: what leads to no bung of the lid
  column,  // upright between lid and table
  row,     // level, right of the tank
  shelf,   // level, right of the table
};
struct Standing {
  Zone zone = Zone::column;
  Heading heading = Heading::up;
  bool reaches_table = false;  // and the lid
  bool air = false;            // leads to the air supply
  bool hangs_on_lid = false;   // begins at the air supply and stands, its last part lowest, on a bung of the lid
};
Standing standing_of(const plan::Plan& plan, const Sketch& sketch, std::size_t connection);

/// Whether the run, as it is drawn, leads to the right with what goes to the air supply, which stands at the left: its
/// pipe would go round the run, or through the tank. A fitter turns the tee the other way round.
bool leads_off_to_supply(const LayoutWish& wish, std::size_t connection, const Standing& standing);

/// Whether a vessel's pin stands in an upright side.
bool is_on_side(const LayoutWish& wish, std::size_t vessel, std::size_t pin);

/// Whether a run that stands under the table leads to an inlet in its side or over its rim.
bool leads_outside(const LayoutWish& wish, std::size_t connection);

/// The link of that connection's run to a port of the lid; nullptr: it has none.
const Link* link_to_lid(const LayoutWish& wish, std::size_t connection);

/// How high over the reservoir's floor, of its height, the run stands that begins at its side: as the job says, else
/// low, as a drain does.
float share_over_floor(const plan::Plan& plan, std::size_t connection);

/// Where the run of a link to its end leaves its last part.
const PlacedPin& face_of(const plan::Plan& plan, const Layout& layout, const Link& link);

inline constexpr float kShoulder = 36.0F;     // points of the supply's ends, which are round: no outlet stands there
inline constexpr float kOutletPitch = 30.0F;  // between two outlets

/// Along the top of the air supply, where each outlet stands. The nearest run has the one furthest right, so that no
/// pipe crosses another; a run that stands on the supply has its own under it.
/// @param wanted  of each outlet, where its run begins or ends; nullptr: it has none
std::vector<float> outlets_of(const Box& supply, const std::vector<const PlacedPin*>& wanted);

/// Fills in the boxes, words and pins of what the blocks hold, and the pipes to the vessels' ports.
void hand_over(const LayoutWish& wish, Layout& layout);

}  // namespace riserun::gui
