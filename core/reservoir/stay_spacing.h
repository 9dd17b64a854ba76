// How close stays must stand for a pressure that is wanted: the design answer, beside the next stay that pays most.
#pragma once

#include "quantity/fact.h"
#include "reservoir/box_panels.h"

#include <optional>

namespace riserun::reservoir {

/// Single stays in a grid between lid and floor, and upright stiffeners on the sides, each as far apart as will do.
struct StaySpacing {
  SupportLayout supports;  // with them in
  Length along{};          // from stay to stay along the length; of none the baffles' own bays
  Length across{};
  int stays = 0;                 // between lid and floor; zero: lid and floor stand it as the baffles leave them
  bool lid_on_baffles = false;   // without stays: lid or floor is not yet held by all the baffles, and is to be
  Length long_side{};            // from stiffener to stiffener on each long side
  int long_side_stiffeners = 0;  // more than there are, on each
  Length short_side{};
  int short_side_stiffeners = 0;
  GaugePressure limit;  // of the whole reservoir then
};

/// The fewest stays and stiffeners with which all walls stand `wanted`. Baffles stay, and so do the stays of a lid and
/// a floor that stand it with them; what else divides the two makes room for the grid, which the stayed-surface rule
/// judges. nullopt: not with stays 2 in apart either, so the sheet is too thin.
std::optional<StaySpacing> stay_spacing(const WallRequest& request, GaugePressure wanted);

/// What is to be put in, wall by wall.
quantity::Facts facts_of(const StaySpacing& spacing);

}  // namespace riserun::reservoir
