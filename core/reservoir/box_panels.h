// From a box, its sheet and its supports to bare panels, and what one more row of supports would give.
#pragma once

#include "quantity/quantities.h"
#include "reservoir/box.h"
#include "reservoir/walls.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::reservoir {

/// A wall is divided by stays or baffles into `along` equal bays of its longer measure and `across` of its shorter.
struct WallBays {
  int along = 1;
  int across = 1;

  bool operator==(const WallBays&) const = default;
};

/// The widest bare rectangle between stays, where that is all that is known of them.
struct BarePanel {
  Length length{};
  Length width{};
  bool lid_only = false;  // the stays hold the lid alone; else they tie lid and floor to each other

  bool operator==(const BarePanel&) const = default;
};

/// What divides the flat walls. A baffle is an upright plate from wall to wall and from floor to lid, welded all round.
struct SupportLayout {
  int baffles_across = 0;       // across the length: they hold lid, floor and long sides
  int baffles_along = 0;        // along the length: they hold lid, floor and short sides
  std::optional<WallBays> lid;  // where stays or stiffeners divide a wall otherwise than the baffles do
  std::optional<WallBays> floor;
  std::optional<WallBays> long_side;
  std::optional<WallBays> short_side;
  std::optional<BarePanel> bare;     // beats the lid's bays, and the floor's unless the stays are the lid's alone
  bool lid_stays_are_posts = false;  // single stays in a grid between lid and floor, not rows: stayed-surface rule too
  bool floor_carried = false;        // the floor lies on something that takes its load

  bool operator==(const SupportLayout&) const = default;
};

/// Posts are meant, and some row of them crosses another where no baffle stands.
bool posts_stand(const SupportLayout& supports);

/// The bays of each wall: those given for it, or those that the baffles make; of a floor on which the lid's posts stand
/// the lid's.
WallBays lid_bays(const SupportLayout& supports);
WallBays floor_bays(const SupportLayout& supports);
WallBays long_side_bays(const SupportLayout& supports);
WallBays short_side_bays(const SupportLayout& supports);

/// The largest bare panel of lid, floor, long sides and short sides: always all of them. Sides that nothing is said of
/// are bare from corner to corner, wherever the lid has its stays.
/// @param water_depth the deepest that the reservoir is ever filled (0: none, as in a leak test with air); each panel
///        is taken as loaded all over as at its lowest edge, which is on the safe side
std::vector<Panel> box_panels(const Box& box, Length thickness, const SupportLayout& supports, Length water_depth,
                              Density water);

/// What governs where posts stand farther apart than lid or floor spans between them by the stayed-surface rule.
inline constexpr const char* kStayedSpan = "span between posts";

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

/// The lid and floor of a box whose lid stays are posts; nullopt: no posts stand in it.
std::optional<StayedSurface> stayed_surface(const WallRequest& request);

/// Air pressure that the weakest panel may see; the stayed-surface rule counts where the lid's stays are single posts.
GaugePressure wall_limit(const WallRequest& request);

/// How far below the atmosphere the empty box may come, as a positive number: every panel bent inward at the design
/// stress, a floor that is carried too. Stays and baffles are taken to stand the push.
GaugePressure wall_vacuum_limit(const WallRequest& request);

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

}  // namespace riserun::reservoir
