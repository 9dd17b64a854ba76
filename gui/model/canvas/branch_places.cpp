#include "gui/model/canvas/branch_places.h"

#include "gui/model/canvas/geometry.h"

#include <algorithm>

namespace riserun::gui {

namespace {

/// The first of them side by side, each with the gap behind it.
float room_of(const std::vector<float>& sizes, std::size_t count) {
  float room = 0.0F;
  for (std::size_t i = 0; i < count; ++i) room += sizes[i] + kNodeGap;
  return room;
}

class Table {
 public:
  Table(const std::vector<const Link*>& links, std::size_t vessels) : links_(links), vessels_(vessels) {}

  BranchPlaces run() {
    follow(*links_.front(), 0, 0);
    places_.rows = lowest_ + 1;
    return std::move(places_);
  }

 private:
  /// Puts what the link leads to into the row, and all that follows into rows from there on.
  void follow(const Link& link, std::size_t column, std::size_t row) {
    lowest_ = std::max(lowest_, row);
    if (link.b.node < vessels_) {
      places_.ends[&link] = row;
      return;
    }
    if (!places_.nodes.emplace(link.b.node, BranchPlace{column, row}).second) return;
    places_.columns = std::max(places_.columns, column + 1);
    bool first = true;
    for (const Link* next : links_) {
      if (next->a.node != link.b.node) continue;
      follow(*next, column + 1, first ? row : lowest_ + 1);
      first = false;
    }
  }

  const std::vector<const Link*>& links_;
  std::size_t vessels_;
  BranchPlaces places_;
  std::size_t lowest_ = 0;
};

}  // namespace

std::size_t BranchPlaces::row_of(const Link& link) const {
  const auto end = ends.find(&link);
  return end != ends.end() ? end->second : nodes.at(link.b.node).row;
}

float BranchPlaces::left_of(std::size_t column) const { return room_of(widths, column); }
float BranchPlaces::top_of(std::size_t row) const { return room_of(heights, row); }

bool branches(const std::vector<const Link*>& links) {
  return std::any_of(links.begin(), links.end(), [&](const Link* link) {
    return std::count_if(links.begin(), links.end(), [&](const Link* other) { return other->a.node == link->a.node; }) >
           1;
  });
}

BranchPlaces branch_places(const std::vector<const Link*>& links, std::size_t vessels) {
  return Table(links, vessels).run();
}

}  // namespace riserun::gui
