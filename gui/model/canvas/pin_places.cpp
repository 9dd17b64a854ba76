#include "gui/model/canvas/pin_places.h"

#include <algorithm>
#include <map>

namespace riserun::gui {

namespace {

/// So far down on the box's right side or its left.
PlacedPin on_side(const Box& box, bool right, float down) {
  return {{right ? box.right() : box.corner.x, box.corner.y + down}, {right ? 1.0F : -1.0F, 0.0F}};
}

class PinPlacing {
 public:
  PinPlacing(const Sketch& sketch, const std::vector<Lane>& lanes, const std::vector<Box>& nodes)
      : sketch_(sketch), lanes_(lanes), nodes_(nodes) {
    for (const Node& node : sketch.nodes) pins_.emplace_back(node.pins.size());
  }

  std::vector<std::vector<PlacedPin>> run() {
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
    return std::move(pins_);
  }

 private:
  void place_spare_pins(std::size_t vessel) {
    const Box& box = nodes_[vessel];
    float x = box.corner.x;
    for (std::size_t pin = 0; pin < pins_[vessel].size(); ++pin) {
      if (!sketch_.nodes[vessel].pins[pin].spare) continue;
      x += kPinPitch;
      pins_[vessel][pin] = {{x, box.bottom()}, {0.0F, 1.0F}};
    }
  }

  void place_part_pins(std::size_t node, bool backwards) {
    const Box& box = nodes_[node];
    std::vector<PlacedPin>& pins = pins_[node];
    const float step = box.size.width / static_cast<float>(std::max<std::size_t>(pins.size(), 3) - 1);
    for (std::size_t pin = 0; pin < pins.size(); ++pin) {
      if (pin < 2)
        pins[pin] = on_side(box, (pin == 0) == backwards, box.size.height / 2.0F);
      else
        pins[pin] = {{box.corner.x + step * static_cast<float>(pin - 1), box.corner.y}, {0.0F, -1.0F}};
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
        pins_[link->a.node][link->a.pin] =
            on_side(nodes_[link->a.node], !lane.backwards, nodes_[link->a.node].size.height / 2.0F);
      else
        down[link->a.node].push_back(link);
    }
    for (auto& [node, links] : down) {
      std::stable_sort(links.begin(), links.end(),
                       [&](const Link* a, const Link* b) { return places.row_of(*a) > places.row_of(*b); });
      const Box& box = nodes_[node];
      for (std::size_t i = 0; i < links.size(); ++i) {
        const float share = (static_cast<float>(i) + 1.0F) / (static_cast<float>(links.size()) + 1.0F);
        const float x = box.corner.x + box.size.width * (lane.backwards ? 1.0F - share : share);
        pins_[node][links[i]->a.pin] = {{x, box.bottom()}, {0.0F, 1.0F}};
      }
    }
  }

  /// The vessel's port that a branch leads to stands at the height of the branch's row.
  void place_branch_end(const Lane& lane, const Link& link) {
    const BranchPlaces& places = *lane.branches;
    const std::size_t row = places.row_of(link);
    place_on_vessel(lane, link.b, lane.top + places.heights[row] / 2.0F + places.top_of(row));
  }

  /// A vessel's pin stands at the height of its lane.
  void place_end(const Lane& lane, PinAt at, bool is_far_end) {
    const float aside = lane.returns ? (is_far_end ? kPinPitch / 2.0F : -kPinPitch / 2.0F) : 0.0F;
    if (at.node < kVessels) place_on_vessel(lane, at, lane.middle() + aside);
  }

  /// On the side that looks at the lane.
  void place_on_vessel(const Lane& lane, PinAt at, float down) {
    pins_[at.node][at.pin] = on_side(nodes_[at.node], lane.is_right_of(at.node), down);
  }

  const Sketch& sketch_;
  const std::vector<Lane>& lanes_;
  const std::vector<Box>& nodes_;
  std::vector<std::vector<PlacedPin>> pins_;
};

}  // namespace

std::vector<std::vector<PlacedPin>> pin_places(const Sketch& sketch, const std::vector<Lane>& lanes,
                                               const std::vector<Box>& nodes) {
  return PinPlacing(sketch, lanes, nodes).run();
}

}  // namespace riserun::gui
