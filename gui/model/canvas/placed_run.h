// A run as it stands on the canvas: its parts, the words of each, and its ends.
#pragma once

#include "gui/model/canvas/geometry.h"
#include "report/drawing/drawing.h"

#include <algorithm>
#include <cstddef>
#include <variant>
#include <vector>

namespace riserun::gui {

/// Which way a run goes on from its base.
enum class Heading { up, down, right };

/// The room that words take, in points.
struct WordSizes {
  std::vector<Size> beside;  // of each node: as it stands beside it
  std::vector<Size> brief;   // ... its name and what is to be seen to, no more: where all has no room
  std::vector<Size> listed;  // ... and its name under the picture of a run among many
  std::vector<Size> titles;  // of each connection
};

struct PlacedNode {
  std::size_t node = 0;
  Box box;                  // of the drawing
  Box words;                // beside it
  bool words_left = false;  // of an upright run: to its left
  bool broken = false;      // drawn shorter than it is
  std::vector<PlacedPin> pins;
};

struct RunBlock {
  std::size_t connection = 0;
  Heading heading = Heading::up;
  bool stands_on_end = false;  // it goes down to the bung that it stands on, and its base is free
  report::Drawing art;         // points; y grows upwards, as drawings have it
  std::vector<PlacedNode> nodes;
  Box title;
  PlacedPin base;                // the pipe to the port that the run begins at; looks away from the run
  std::vector<PlacedPin> faces;  // of each end: the pipe to the port that it leads to; no direction: a device is there
  Box all;

  /// Everything so much to the right and down.
  void move(const Point& offset);
};

/// How a run is turned, and where its words may stand.
struct Stance {
  Heading heading = Heading::up;
  bool on_end = false;      // as RunBlock::stands_on_end
  bool in_rows = false;     // the names of its parts are listed under it
  bool mirrored = false;    // as seen in a mirror along its axis: what led to the right leads to the left
  bool words_over = false;  // of a level run: not under it
};

/// Changes every spot of a drawing's areas and strokes.
inline void each_spot(report::Drawing& drawing, const auto& change) {
  for (report::Shape& shape : drawing.shapes) {
    if (auto* area = std::get_if<report::Area>(&shape))
      std::for_each(area->outline.begin(), area->outline.end(), change);
    if (auto* stroke = std::get_if<report::Stroke>(&shape))
      std::for_each(stroke->points.begin(), stroke->points.end(), change);
  }
}

}  // namespace riserun::gui
