// The connections of a sketch as lanes, each between the two vessels that it joins; what the layout and the places of
// the pins go by.
#pragma once

#include "gui/model/canvas/branch_places.h"
#include "gui/model/canvas/sketch.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace riserun::gui {

inline constexpr std::size_t kVessels = 3;  // reservoir, table, air supply: the first rows of a sketch
inline constexpr std::size_t kNoVessel = static_cast<std::size_t>(-1);

/// Columns from left to right: the vessel rows of a sketch by column, and back.
inline constexpr std::size_t kVesselOfColumn[kVessels] = {2, 0, 1};
inline constexpr std::size_t kColumnOfVessel[kVessels] = {1, 2, 0};

/// One connection: the nodes between its two ends, left to right.
struct Lane {
  std::vector<std::size_t> nodes;
  std::vector<const Link*> links;
  std::size_t gap = 0;           // between which columns it lies
  std::size_t left = kNoVessel;  // vessel that it begins at, and that it leads to
  std::size_t right = kNoVessel;
  bool backwards = false;                // runs right to left
  bool returns = false;                  // both ends on one vessel
  std::optional<BranchPlaces> branches;  // of a run that branches: where its nodes stand beside each other
  // set by the layout
  float width = 0.0F;
  float height = 0.0F;
  float top = 0.0F;
  float base = 0.0F;  // of a run that branches: from its top to the middle of its first row
  /// Whether it stands at the right side of that vessel.
  bool is_right_of(std::size_t vessel) const { return kColumnOfVessel[vessel] <= gap; }
  float middle() const { return top + (branches ? base : height / 2.0F); }
};

/// A row for each connection.
std::vector<Lane> lanes_of(const Sketch& sketch);
/// The rows of the lanes from the top down.
std::vector<std::size_t> stacked(const std::vector<Lane>& lanes);

}  // namespace riserun::gui
