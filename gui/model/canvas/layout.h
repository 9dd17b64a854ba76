// Where everything stands on the canvas: an elevation of the job. The tank low, the table over it in the job's
// proportions, the air supply at the left; runs stand on the ports that they leave, all to one scale. Of many runs each
// is a row of its own beside a small elevation, the rows wrapped. A pure function: the same job, words, room and moved
// runs give the same layout.
#pragma once

#include "gui/model/canvas/run_block.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// As many runs still stand in the elevation itself.
inline constexpr std::size_t kMostStanding = 14;

struct LayoutWish {
  const plan::Plan& plan;
  const Sketch& sketch;
  const std::vector<report::RunPicture>& pictures;  // of each connection
  const WordSizes& words;
  Size room;                                  // that should do for all of it
  const std::map<std::string, Point>& moved;  // how far each thing was moved by hand, by its `moved_as`
  std::optional<double> scale{};              // points a metre; none: as large as the room allows
};

struct Layout {
  std::vector<Box> nodes;                    // a row for each of Sketch::nodes: what is drawn of it
  std::vector<Box> words;                    // ... its words beside it; those of vessels stand inside
  std::vector<std::vector<PlacedPin>> pins;  // ... and each of their pins
  std::vector<RunBlock> runs;
  std::vector<std::vector<Point>> ways;  // of each link: the pipe to a vessel's port; empty: the parts meet
  bool in_rows = false;                  // runs are rows of their own, their ends told by name
  double scale = 0.0;                    // points a metre, of the parts
  Box all;                               // what fits in the window when all is shown
};

/// The pictures that a layout is made of.
std::vector<report::RunPicture> run_pictures(const plan::Plan& plan);

Layout lay_out(const LayoutWish& wish);

/// The name under which a node is moved by hand: a run as a whole, the air supply; empty: it is not moved.
std::string moved_as(const plan::Plan& plan, const Node& node);

}  // namespace riserun::gui
