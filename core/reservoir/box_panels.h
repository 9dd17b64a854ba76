// From a box, its sheet and its supports to bare panels; what one more row of supports would give; and the load that
// each support and its weld must carry.
#pragma once

#include "quantity/quantities.h"
#include "reservoir/box.h"
#include "reservoir/walls.h"

#include <boost/units/operators.hpp>

#include <optional>
#include <string>
#include <vector>

namespace riserun::reservoir {

/// A wall is divided by stays or baffles into `along` equal bays of its longer measure and `across` of its shorter.
struct WallBays {
  int along = 1;
  int across = 1;
};

/// What divides the flat walls. A baffle is an upright plate from wall to wall and from floor to lid, welded all round.
struct SupportLayout {
  int baffles_across = 0;       // across the length: they hold lid, floor and long sides
  int baffles_along = 0;        // along the length: they hold lid, floor and short sides
  std::optional<WallBays> lid;  // where stays or stiffeners divide a wall otherwise than the baffles do
  std::optional<WallBays> floor;
  std::optional<WallBays> long_side;
  std::optional<WallBays> short_side;
  bool lid_stays_are_posts = false;  // single stays in a grid between lid and floor, not rows: stayed-surface rule too
  bool floor_carried = false;        // the floor lies on something that takes its load
};

/// The bays of each wall: those given for it, or those that the baffles make.
WallBays lid_bays(const SupportLayout& supports);
WallBays floor_bays(const SupportLayout& supports);
WallBays long_side_bays(const SupportLayout& supports);
WallBays short_side_bays(const SupportLayout& supports);

/// The largest bare panel of lid, floor, long sides and short sides.
/// @param water_depth the deepest that the reservoir is ever filled (0: none, as in a leak test with air); each panel
///        is taken as loaded all over as at its lowest edge, which is on the safe side
std::vector<Panel> box_panels(const Box& box, Length thickness, const SupportLayout& supports, Length water_depth,
                              Density water);

/// When all that is known is the widest bare panel: one in the lid, and, unless it is known to be in the lid only, the
/// same in the floor under the full depth of water.
std::vector<Panel> bare_panels(Length length, Length width, Length thickness, bool lid_only, Length water_depth,
                               Density water);

/// All that judges a box's walls.
struct WallRequest {
  Box box;
  Length thickness{};
  SupportLayout supports;
  Length water_depth{};
  Density water{};
  SheetMetal metal;
  Stress design_stress;
  quantity::Fact design_stress_basis;
};

/// Air pressure that the weakest panel may see; the stayed-surface rule counts where the lid's stays are single posts.
GaugePressure wall_limit(const WallRequest& request);

/// What one more row of supports in one direction would give.
struct NextSupport {
  std::string what;         // "one more baffle across the length"
  SupportLayout supports;   // with it in
  GaugePressure limit;      // of the whole reservoir then
  PressureDifference gain;  // over the limit now
  std::string weakest;      // the panel that governs then
  Length panel_length{};    // of that panel
  Length panel_width{};
  bool small_deflection = true;  // at that limit; false: the true gain differs, as the plate also stretches
};

/// Every way to add one row, the best first; equal ones in the order baffles, stays, long sides, short sides.
std::vector<NextSupport> next_supports(const WallRequest& request);

using ForcePerLength = boost::units::quantity<boost::units::divide_typeof_helper<si::force, si::length>::type>;  // N/m

/// What the supports of the lid carry at a pressure: pressure times the area that leans on each. Where
/// rows cross, each is taken as if it carried its strip alone, which is on the safe side.
struct SupportLoads {
  Force lid{};              // the whole lid; its outer weld carries what the supports do not
  Force each_row_across{};  // a row of stays or a baffle across the length; zero: none
  Force each_row_along{};
  Force each_post{};  // a single stay where two rows would cross; zero: none
  int rows_across = 0;
  int rows_along = 0;
  int posts = 0;
  ForcePerLength weld_of_row_across{};  // along the row's weld to the lid
  ForcePerLength weld_of_row_along{};
};
SupportLoads support_loads(const Box& box, const SupportLayout& supports, GaugePressure pressure);

inline double in_pounds_per_inch(ForcePerLength v) {
  return v.value() * kMetresPerInch / (kKilogramsPerPound * kStandardGravity);
}

}  // namespace riserun::reservoir
