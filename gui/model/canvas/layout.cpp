#include "gui/model/canvas/layout.h"

#include "gui/model/canvas/branch_places.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace riserun::gui {

namespace {

constexpr std::size_t kVessels = 3;  // reservoir, table, air supply: the first rows of a sketch
constexpr std::size_t kNoVessel = static_cast<std::size_t>(-1);
constexpr std::size_t kGaps = 3;          // between air supply and reservoir, reservoir and table, right of the table
constexpr float kHead = 56.0F;            // of a vessel, above its first lane: its name and measures
constexpr float kVesselMargin = 24.0F;    // below its last lane
constexpr float kNarrowestGap = 140.0F;   // between two vessels with nothing between them
constexpr float kShortestHandle = 20.0F;  // of a link's curve
constexpr float kLongestHandle = 120.0F;

/// Columns from left to right: the vessel rows of a sketch by column, and back.
constexpr std::size_t kVesselOfColumn[kVessels] = {2, 0, 1};
constexpr std::size_t kColumnOfVessel[kVessels] = {1, 2, 0};

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
  float width = 0.0F;
  float height = 0.0F;
  float top = 0.0F;
  float base = 0.0F;  // of a run that branches: from its top to the middle of its first row
  float middle() const { return top + (branches ? base : height / 2.0F); }
};

Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
Point operator*(Point a, float s) { return {a.x * s, a.y * s}; }

bool too_close(const Box& a, const Box& b, float gap) {
  return a.corner.x < b.right() + gap && b.corner.x < a.right() + gap && a.corner.y < b.bottom() + gap &&
         b.corner.y < a.bottom() + gap;
}

class Placing {
 public:
  Placing(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved)
      : sketch_(sketch), moved_(moved), is_moved_(sketch.nodes.size(), false) {
    layout_.nodes.resize(sketch.nodes.size());
    layout_.pins.resize(sketch.nodes.size());
    for (std::size_t node = 0; node < sketch.nodes.size(); ++node) {
      layout_.nodes[node].size = node < sizes.size() ? sizes[node] : Size();
      layout_.pins[node].resize(sketch.nodes[node].pins.size());
    }
  }

  Layout run() {
    find_lanes();
    stack_lanes();
    place_vessels();
    place_lanes();
    put_where_moved();
    make_way();
    place_pins();
    draw_links();
    enclose();
    return std::move(layout_);
  }

 private:
  // ---- lanes
  void find_lanes() {
    std::size_t count = 0;
    for (const Link& link : sketch_.links) count = std::max(count, link.connection + 1);
    lanes_.resize(count);
    for (const Link& link : sketch_.links) lanes_[link.connection].links.push_back(&link);
    for (std::size_t node = kVessels; node < sketch_.nodes.size(); ++node)
      if (sketch_.nodes[node].connection < count) lanes_[sketch_.nodes[node].connection].nodes.push_back(node);
    for (Lane& lane : lanes_) settle_ends(lane);
    order_.resize(lanes_.size());
    for (std::size_t i = 0; i < order_.size(); ++i) order_[i] = i;
    // Runs between two vessels stand above those that end in a device: the eye follows the water first.
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return rank(lanes_[a]) < rank(lanes_[b]); });
  }

  static int rank(const Lane& lane) { return lane.right == kNoVessel ? 2 : lane.returns ? 1 : 0; }

  /// A run that branches grows from its base towards the farthest left that it leads to, else to the right.
  void settle_branches(Lane& lane) const {
    lane.left = lane.links.front()->a.node;
    for (const Link* link : lane.links) {
      const std::size_t to = link->b.node;
      if (to >= kVessels || to == lane.left) continue;
      if (lane.right == kNoVessel || kColumnOfVessel[to] < kColumnOfVessel[lane.right]) lane.right = to;
    }
    lane.gap = kColumnOfVessel[lane.left];
    lane.backwards = lane.right != kNoVessel && kColumnOfVessel[lane.right] < kColumnOfVessel[lane.left];
    if (!lane.backwards) return;
    std::swap(lane.left, lane.right);
    lane.gap = kColumnOfVessel[lane.right] - 1;
  }

  void settle_ends(Lane& lane) const {
    if (lane.links.empty()) return;
    if (branches(lane.links) && lane.links.front()->a.node < kVessels) {
      lane.branches = branch_places(lane.links, kVessels);
      return settle_branches(lane);
    }
    const std::size_t from = lane.links.front()->a.node;
    const std::size_t to = lane.links.back()->b.node;
    if (from < kVessels) lane.left = from;
    if (to < kVessels) lane.right = to;
    lane.returns = lane.left == lane.right && lane.left != kNoVessel;
    if (lane.left != kNoVessel && lane.right != kNoVessel && kColumnOfVessel[lane.left] > kColumnOfVessel[lane.right]) {
      lane.backwards = true;
      std::swap(lane.left, lane.right);
      std::reverse(lane.nodes.begin(), lane.nodes.end());
    }
    if (lane.left == kNoVessel) return;
    // From the air supply straight to the table: beside the runs that lead to the table.
    lane.gap = lane.right != kNoVessel && !lane.returns ? kColumnOfVessel[lane.right] - 1 : kColumnOfVessel[lane.left];
  }

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
    for (const float width : places.widths) lane.width += width + kNodeGap;
    lane.height = 0.0F;
    for (const float height : places.heights) lane.height += height + kNodeGap;
    lane.height -= kNodeGap;
    lane.base = places.heights.front() / 2.0F;
  }

  void place_branches(const Lane& lane, float left) {
    const BranchPlaces& places = *lane.branches;
    for (const auto& [node, place] : places.nodes) {
      Box& box = layout_.nodes[node];
      float along = 0.0F;
      for (std::size_t column = 0; column < place.column; ++column) along += places.widths[column] + kNodeGap;
      float top = lane.top;
      for (std::size_t row = 0; row < place.row; ++row) top += places.heights[row] + kNodeGap;
      const float x = lane.backwards ? left + lane.width - 2.0F * kNodeGap - along - box.size.width : left + along;
      box.corner = {x, top + (places.heights[place.row] - box.size.height) / 2.0F};
    }
  }

  // ---- nodes
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

  // ---- pins and links
  void place_pins() {
    for (std::size_t vessel = 0; vessel < kVessels; ++vessel) place_spare_pins(vessel);
    for (const Lane& lane : lanes_) {
      for (const std::size_t node : lane.nodes) place_part_pins(node, lane.backwards);
      if (lane.links.empty()) continue;
      if (lane.branches) {
        place_branch_pins(lane);
        continue;
      }
      place_end(lane, lane.links.front()->a, false);
      place_end(lane, lane.links.back()->b, true);
    }
  }

  void place_spare_pins(std::size_t vessel) {
    const Box& box = layout_.nodes[vessel];
    float x = box.corner.x;
    for (std::size_t pin = 0; pin < layout_.pins[vessel].size(); ++pin) {
      if (!sketch_.nodes[vessel].pins[pin].spare) continue;
      x += kPinPitch;
      layout_.pins[vessel][pin] = {{x, box.bottom()}, {0.0F, 1.0F}};
    }
  }

  void place_part_pins(std::size_t node, bool backwards) {
    const Box& box = layout_.nodes[node];
    const float middle = box.corner.y + box.size.height / 2.0F;
    const PlacedPin left{{box.corner.x, middle}, {-1.0F, 0.0F}};
    const PlacedPin right{{box.right(), middle}, {1.0F, 0.0F}};
    std::vector<PlacedPin>& pins = layout_.pins[node];
    const float step = box.size.width / static_cast<float>(std::max<std::size_t>(pins.size(), 3) - 1);
    for (std::size_t pin = 0; pin < pins.size(); ++pin) {
      if (pin < 2) {
        pins[pin] = (pin == 0) == backwards ? right : left;
      } else {
        pins[pin] = {{box.corner.x + step * static_cast<float>(pin - 1), box.corner.y}, {0.0F, -1.0F}};
      }
    }
  }

  /// What leads on in the same row leaves straight on; what leads to rows below leaves downwards, the lowest nearest to
  /// the base, so that no two pipes cross.
  void place_branch_pins(const Lane& lane) {
    const BranchPlaces& places = *lane.branches;
    place_end(lane, lane.links.front()->a, false);
    std::map<std::size_t, std::vector<const Link*>> down;
    for (const Link* link : lane.links) {
      if (link->b.node < kVessels) place_branch_end(lane, *link);
      if (link->a.node < kVessels) continue;
      const std::size_t row = places.row_of(*link);
      if (row == places.nodes.at(link->a.node).row)
        layout_.pins[link->a.node][link->a.pin] = far_side(link->a.node, lane.backwards);
      else
        down[link->a.node].push_back(link);
    }
    for (auto& [node, links] : down) {
      std::stable_sort(links.begin(), links.end(),
                       [&](const Link* a, const Link* b) { return places.row_of(*a) > places.row_of(*b); });
      const Box& box = layout_.nodes[node];
      for (std::size_t i = 0; i < links.size(); ++i) {
        const float share = (static_cast<float>(i) + 1.0F) / (static_cast<float>(links.size()) + 1.0F);
        const float x = box.corner.x + box.size.width * (lane.backwards ? 1.0F - share : share);
        layout_.pins[node][links[i]->a.pin] = {{x, box.bottom()}, {0.0F, 1.0F}};
      }
    }
  }

  PlacedPin far_side(std::size_t node, bool backwards) const {
    const Box& box = layout_.nodes[node];
    const float middle = box.corner.y + box.size.height / 2.0F;
    return backwards ? PlacedPin{{box.corner.x, middle}, {-1.0F, 0.0F}}
                     : PlacedPin{{box.right(), middle}, {1.0F, 0.0F}};
  }

  /// The vessel's port that a branch leads to stands at the height of the branch's row.
  void place_branch_end(const Lane& lane, const Link& link) {
    const BranchPlaces& places = *lane.branches;
    const std::size_t row = places.row_of(link);
    float y = lane.top + places.heights[row] / 2.0F;
    for (std::size_t i = 0; i < row; ++i) y += places.heights[i] + kNodeGap;
    const Box& box = layout_.nodes[link.b.node];
    const bool on_right = kColumnOfVessel[link.b.node] <= lane.gap;
    layout_.pins[link.b.node][link.b.pin] = {{on_right ? box.right() : box.corner.x, box.corner.y + y},
                                             {on_right ? 1.0F : -1.0F, 0.0F}};
  }

  /// A vessel's pin stands at the height of its lane, on the side that looks at it.
  void place_end(const Lane& lane, PinAt at, bool is_far_end) {
    if (at.node >= kVessels) return;
    const Box& box = layout_.nodes[at.node];
    const bool on_right = kColumnOfVessel[at.node] <= lane.gap;
    const float aside = lane.returns ? (is_far_end ? kPinPitch / 2.0F : -kPinPitch / 2.0F) : 0.0F;
    layout_.pins[at.node][at.pin] = {{on_right ? box.right() : box.corner.x, box.corner.y + lane.middle() + aside},
                                     {on_right ? 1.0F : -1.0F, 0.0F}};
  }

  void draw_links() {
    for (const Link& link : sketch_.links) {
      const PlacedPin& a = layout_.pins[link.a.node][link.a.pin];
      const PlacedPin& b = layout_.pins[link.b.node][link.b.pin];
      const float apart = std::hypot(b.where.x - a.where.x, b.where.y - a.where.y);
      const float handle = std::clamp(apart * 0.4F, kShortestHandle, kLongestHandle);
      layout_.links.push_back({a.where, a.where + a.direction * handle, b.where + b.direction * handle, b.where});
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

bool overlap(const Box& a, const Box& b) { return too_close(a, b, 0.0F); }

Layout lay_out(const Sketch& sketch, const std::vector<Size>& sizes, const std::map<std::string, Point>& moved) {
  return Placing(sketch, sizes, moved).run();
}

}  // namespace riserun::gui
