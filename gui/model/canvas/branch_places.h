// A run that branches as a table of columns and rows: the trunk in the first row, each branch in a row of its own.
#pragma once

#include "gui/model/canvas/sketch.h"

#include <cstddef>
#include <map>
#include <vector>

namespace riserun::gui {

struct BranchPlace {
  std::size_t column = 0;  // counted from the base
  std::size_t row = 0;
};

struct BranchPlaces {
  std::map<std::size_t, BranchPlace> nodes;  // by row of Sketch::nodes
  std::map<const Link*, std::size_t> ends;   // links to vessels, and their rows
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::vector<float> widths;   // of the columns, for the layout
  std::vector<float> heights;  // of the rows

  /// The row that a link leads to.
  std::size_t row_of(const Link& link) const;
  /// From the table's edge to that column, that row.
  float left_of(std::size_t column) const;
  float top_of(std::size_t row) const;
};

/// Whether some node has more than one link that leads on.
bool branches(const std::vector<const Link*>& links);

/// What follows at the first pin that leads on stands in the same row; what follows at others in rows below, so that
/// between a part and its lowest branch nothing stands but what follows from it.
/// @param links    from the base outwards, each before those that follow from it
/// @param vessels  nodes with a lower row are no part of the run
BranchPlaces branch_places(const std::vector<const Link*>& links, std::size_t vessels);

}  // namespace riserun::gui
