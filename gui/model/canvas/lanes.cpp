#include "gui/model/canvas/lanes.h"

#include <algorithm>

namespace riserun::gui {

namespace {

int rank(const Lane& lane) { return lane.right == kNoVessel ? 2 : lane.returns ? 1 : 0; }

/// A run that branches grows from its base towards the farthest left that it leads to, else to the right.
void settle_branches(Lane& lane) {
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

void settle_ends(Lane& lane) {
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

}  // namespace

std::vector<Lane> lanes_of(const Sketch& sketch) {
  std::size_t count = 0;
  for (const Link& link : sketch.links) count = std::max(count, link.connection + 1);
  std::vector<Lane> lanes(count);
  for (const Link& link : sketch.links) lanes[link.connection].links.push_back(&link);
  for (std::size_t node = kVessels; node < sketch.nodes.size(); ++node)
    if (sketch.nodes[node].connection < count) lanes[sketch.nodes[node].connection].nodes.push_back(node);
  for (Lane& lane : lanes) settle_ends(lane);
  return lanes;
}

std::vector<std::size_t> stacked(const std::vector<Lane>& lanes) {
  std::vector<std::size_t> order(lanes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  // Runs between two vessels stand above those that end in a device: the eye follows the water first.
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rank(lanes[a]) < rank(lanes[b]); });
  return order;
}

}  // namespace riserun::gui
