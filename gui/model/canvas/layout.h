// What a layout of the canvas is made of, and what it holds: where vessels, runs, words and pipes stand.
#pragma once

#include "gui/model/canvas/run_block.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// As many runs still stand in the elevation itself.
inline constexpr std::size_t kMostStanding = 14;

/// Words are not shrunk further than that: below this zoom runs are folded.
inline constexpr float kLeastLegible = 11.0F / 13.0F;

struct LayoutWish {
  const plan::Plan& plan;
  const Sketch& sketch;
  const std::vector<report::RunPicture>& pictures;  // of each connection
  const WordSizes& words;
  Size room;                                  // that should do for all of it
  const std::map<std::string, Point>& moved;  // how far each thing was moved by hand, by its `moved_as`
  std::optional<double> scale{};              // points a metre; none: as large as the room allows
  bool brief = false;                         // at that scale: as Layout::brief
};

struct Layout {
  std::vector<Box> nodes;                    // a row for each of Sketch::nodes: what is drawn of it
  std::vector<Box> words;                    // ... its words beside it; those of vessels stand inside
  std::vector<std::vector<PlacedPin>> pins;  // ... and each of their pins
  std::vector<RunBlock> runs;
  std::vector<std::vector<Point>> ways;  // of each link: the pipe to a vessel's port; empty: the parts meet
  std::map<std::size_t, std::vector<Point>> over_rim;  // of the table's pins: the pipe that is its own
  bool in_rows = false;                                // runs are rows of their own, their ends told by name
  bool brief = false;  // beside the parts stand their names and no prices, which have no room
  double scale = 0.0;  // points a metre, of the parts
  Box all;             // what fits in the window when all is shown
};

}  // namespace riserun::gui
