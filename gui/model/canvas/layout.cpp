#include "gui/model/canvas/layout.h"

#include "gui/model/canvas/lanes.h"
#include "gui/model/canvas/pin_places.h"

#include <algorithm>

namespace riserun::gui {

namespace {

constexpr std::size_t kGaps = 3;         // between air supply and reservoir, reservoir and table, right of the table
constexpr float kHead = 56.0F;           // of a vessel, above its first lane: its name and measures
constexpr float kVesselMargin = 24.0F;   // below its last lane
constexpr float kNarrowestGap = 140.0F;  // between two vessels with nothing between them

class Placing {
 public:
  Placing(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved)
      : sketch_(sketch),
        moved_(moved),
        lanes_(lanes_of(sketch)),
        order_(stacked(lanes_)),
        is_moved_(sketch.nodes.size(), false) {
    layout_.nodes.resize(sketch.nodes.size());
    for (std::size_t node = 0; node < std::min(sketch.nodes.size(), sizes.size()); ++node)
      layout_.nodes[node].size = sizes[node];
  }

  Layout run() {
    stack_lanes();
    place_vessels();
    place_lanes();
    put_where_moved();
    make_way();
    layout_.pins = pin_places(sketch_, lanes_, layout_.nodes);
    enclose();
    return std::move(layout_);
  }

 private:
  void stack_lanes() {
    float top[kGaps] = {kHead, kHead, kHead};
    for (const std::size_t row : order_) {
      Lane& lane = lanes_[row];
      lane.height = kPinPitch * 2.0F;
      lane.width = kNodeGap;
      if (lane.branches) measure_branches(lane);
      for (const std::size_t node : lane.nodes) {
        if (lane.branches) break;
        lane.height = std::max(lane.height, layout_.nodes[node].size.height);
        lane.width += layout_.nodes[node].size.width + kNodeGap;
      }
      lane.top = top[lane.gap];
      top[lane.gap] += lane.height + kLaneGap;
      gap_width_[lane.gap] = std::max(gap_width_[lane.gap], lane.width + 2.0F * kNodeGap);
    }
  }

  static bool leads_to(const Lane& lane, std::size_t vessel) {
    return lane.branches && std::any_of(lane.links.begin(), lane.links.end(),
                                        [vessel](const Link* link) { return link->b.node == vessel; });
  }

  /// Columns as wide as their widest node, rows as high as their highest.
  void measure_branches(Lane& lane) {
    BranchPlaces& places = *lane.branches;
    places.widths.assign(places.columns, 0.0F);
    places.heights.assign(places.rows, kPinPitch);
    for (const auto& [node, place] : places.nodes) {
      const Size& size = layout_.nodes[node].size;
      places.widths[place.column] = std::max(places.widths[place.column], size.width);
      places.heights[place.row] = std::max(places.heights[place.row], size.height);
    }
    lane.width += places.left_of(places.columns);
    lane.height = places.top_of(places.rows) - kNodeGap;
    lane.base = places.heights.front() / 2.0F;
  }

  void place_branches(const Lane& lane, float left) {
    const BranchPlaces& places = *lane.branches;
    for (const auto& [node, place] : places.nodes) {
      Box& box = layout_.nodes[node];
      const float along = places.left_of(place.column);
      const float top = lane.top + places.top_of(place.row);
      const float x = lane.backwards ? left + lane.width - 2.0F * kNodeGap - along - box.size.width : left + along;
      box.corner = {x, top + (places.heights[place.row] - box.size.height) / 2.0F};
    }
  }

  void place_vessels() {
    for (std::size_t vessel = 0; vessel < kVessels; ++vessel) {
      Size& size = layout_.nodes[vessel].size;
      std::size_t spare = 0;
      for (const Pin& pin : sketch_.nodes[vessel].pins) spare += pin.spare ? 1 : 0;
      size.width = std::max(size.width, kPinPitch * static_cast<float>(spare + 1));
      for (const Lane& lane : lanes_)
        if (lane.left == vessel || lane.right == vessel || leads_to(lane, vessel))
          size.height = std::max(size.height, lane.top + lane.height + kVesselMargin);
    }
    float x = 0.0F;
    for (std::size_t column = 0; column < kVessels; ++column) {
      Box& box = layout_.nodes[kVesselOfColumn[column]];
      box.corner = {x, 0.0F};
      column_x_[column] = x;
      x = box.right() + std::max(gap_width_[column], kNarrowestGap);
    }
  }

  void place_lanes() {
    for (const Lane& lane : lanes_) {
      const std::size_t vessel = kVesselOfColumn[lane.gap];
      const float gap_left = layout_.nodes[vessel].right();
      const bool across = lane.right != kNoVessel && !lane.returns && lane.gap + 1 < kVessels;
      const float room = across ? column_x_[lane.gap + 1] - gap_left : lane.width + 2.0F * kNodeGap;
      float x = gap_left + (room - lane.width) / 2.0F + kNodeGap;
      if (lane.branches) {
        place_branches(lane, x);
        continue;
      }
      for (const std::size_t node : lane.nodes) {
        Box& box = layout_.nodes[node];
        box.corner = {x, lane.middle() - box.size.height / 2.0F};
        x = box.right() + kNodeGap;
      }
    }
  }

  void put_where_moved() {
    for (std::size_t node = 0; node < sketch_.nodes.size(); ++node) {
      const auto place = moved_.find(sketch_.nodes[node].key);
      if (place == moved_.end()) continue;
      layout_.nodes[node].corner = place->second;
      is_moved_[node] = any_moved_ = true;
    }
  }

  /// Everything else gives way to what the user has moved, and then to each other, downwards.
  void make_way() {
    if (!any_moved_) return;  // lanes do not meet by themselves
    std::vector<Box> placed;
    for (std::size_t node = 0; node < sketch_.nodes.size(); ++node)
      if (is_moved_[node] || node < kVessels) placed.push_back(layout_.nodes[node]);
    for (const std::size_t row : order_) {
      for (const std::size_t node : lanes_[row].nodes) {
        if (is_moved_[node]) continue;
        push_down(layout_.nodes[node], placed);
        placed.push_back(layout_.nodes[node]);
      }
    }
  }

  static void push_down(Box& box, const std::vector<Box>& placed) {
    for (bool free = false; !free;) {
      free = true;
      for (const Box& other : placed) {
        if (!too_close(box, other, kNodeGap / 2.0F)) continue;
        box.corner.y = other.bottom() + kNodeGap;
        free = false;
      }
    }
  }

  void enclose() {
    Point low = layout_.nodes.front().corner;
    Point high = low;
    for (const Box& box : layout_.nodes) {
      low = {std::min(low.x, box.corner.x), std::min(low.y, box.corner.y)};
      high = {std::max(high.x, box.right()), std::max(high.y, box.bottom())};
    }
    layout_.all = {low, {high.x - low.x, high.y - low.y}};
  }

  const Sketch& sketch_;
  const std::map<std::string, Point>& moved_;
  Layout layout_;
  std::vector<Lane> lanes_;
  std::vector<std::size_t> order_;
  std::vector<bool> is_moved_;
  bool any_moved_ = false;
  float gap_width_[kGaps] = {};
  float column_x_[kVessels] = {};
};

}  // namespace

Layout lay_out(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved) {
  return Placing(sketch, sizes, moved).run();
}

}  // namespace riserun::gui
