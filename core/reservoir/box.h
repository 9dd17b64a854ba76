// The reservoir as a closed box with flat sides, and the open table over it: levels and volumes.
#pragma once

#include "quantity/quantities.h"

namespace riserun::reservoir {

/// Inside measures of a closed box. Supports and baffles take `solid_fraction` of every slice of it.
struct Box {
  Length length{};
  Length width{};
  Length height{};
  double solid_fraction = 0.0;  // 0 to 0.5

  Area free_area() const { return length * width * (1.0 - solid_fraction); }
  Volume capacity() const { return free_area() * height; }
  Volume volume_at(Length depth) const { return free_area() * depth; }
  Length depth_at(Volume volume) const { return volume / free_area(); }
};

/// An open table with upright sides. Heights are above the reservoir's inside floor.
struct Table {
  Length length{};
  Length width{};
  Length floor_height{};
  Length rim{};                 // height of the edge above the table's floor
  double solid_fraction = 0.0;  // slats, grates and supports under water

  Area free_area() const { return length * width * (1.0 - solid_fraction); }
  Volume volume_at(Length depth) const { return free_area() * depth; }
  Length depth_at(Volume volume) const { return volume / free_area(); }
};

}  // namespace riserun::reservoir
