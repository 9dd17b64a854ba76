#include "gui/model/canvas/leader.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace riserun::gui {

namespace {

bool lies_level(const PlacedPin& pin) { return std::abs(pin.direction.x) > 0.5F; }

/// The part's axis from end to end; of one that turns, from its first end to its far side through where its ways meet.
std::pair<Point, Point> axis_of(const PlacedNode& node) {
  const Box& box = node.box;
  if (node.pins.empty()) return {box.middle(), box.middle()};
  const PlacedPin& first = node.pins.front();
  const bool along = node.pins.size() > 1 && lies_level(node.pins[1]) == lies_level(first);
  if (along && lies_level(first)) return {first.where, {node.pins[1].where.x, first.where.y}};
  if (along) return {first.where, {first.where.x, node.pins[1].where.y}};
  if (node.pins.size() > 1) {
    const Point& second = node.pins[1].where;
    const Point meet = lies_level(first) ? Point{second.x, first.where.y} : Point{first.where.x, second.y};
    return {meet, meet};
  }
  if (lies_level(first)) return {first.where, {first.direction.x > 0.0F ? box.corner.x : box.right(), first.where.y}};
  return {first.where, {first.where.x, first.direction.y > 0.0F ? box.corner.y : box.bottom()}};
}

bool within(const Box& box, const Point& at) {
  return box.corner.x < at.x && at.x < box.right() && box.corner.y < at.y && at.y < box.bottom();
}

/// In what the run is screwed into, or leads to: a bung, of which as much stands out.
bool is_in_bung(const PlacedPin& end, const Point& at) {
  constexpr float kWide = 20.0F;  // points
  constexpr float kDeep = 30.0F;
  const float x = at.x - end.where.x;
  const float y = at.y - end.where.y;
  const float beyond = x * end.direction.x + y * end.direction.y;
  return beyond > 0.0F && beyond < kDeep && std::abs(x * end.direction.y - y * end.direction.x) < kWide;
}

float side_of(const Point& a, const Point& b, const Point& at) {
  return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
}

/// In the middle of the longest piece of that line on which no other part is seen; nullopt: there is none.
std::optional<Point> middle_of_seen(const RunBlock& block, const PlacedNode& node, const Point& from, const Point& to) {
  constexpr int kSteps = 40;
  const auto at = [&](float step) {
    const float share = step / kSteps;
    return Point{from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
  };
  const auto is_seen = [&](int step) {
    const Point spot = at(static_cast<float>(step));
    const auto in_bung = [&](const PlacedPin& end) { return is_in_bung(end, spot); };
    const auto covers = [&](const PlacedNode& other) { return other.node != node.node && within(other.box, spot); };
    return !in_bung(block.base) && std::none_of(block.faces.begin(), block.faces.end(), in_bung) &&
           std::none_of(block.nodes.begin(), block.nodes.end(), covers);
  };
  int best = 0;
  int longest = 0;
  int begin = 0;
  for (int step = 0; step <= kSteps; ++step) {
    if (!is_seen(step)) {
      begin = step + 1;
    } else if (step + 1 - begin > longest) {
      longest = step + 1 - begin;
      best = begin;
    }
  }
  if (longest == 0) return std::nullopt;
  return at(static_cast<float>(best) + static_cast<float>(longest - 1) / 2.0F);
}

}  // namespace

Point leader_foot(const RunBlock& block, const PlacedNode& node) {
  const auto [from, to] = axis_of(node);
  if (const auto seen = middle_of_seen(block, node, from, to)) return *seen;
  // Of a bushing the axis lies within what is screwed into it: its hexagon is seen beside that.
  constexpr float kOff = 0.85F;  // of half its breadth
  const bool level_axis = std::abs(to.x - from.x) > std::abs(to.y - from.y);
  const float half = kOff * (level_axis ? node.box.size.height : node.box.size.width) / 2.0F;
  for (const float by : {node.words_left ? -half : half, node.words_left ? half : -half}) {
    const Point off = level_axis ? Point{0.0F, by} : Point{by, 0.0F};
    if (const auto seen = middle_of_seen(block, node, {from.x + off.x, from.y + off.y}, {to.x + off.x, to.y + off.y}))
      return *seen;
  }
  return {(from.x + to.x) / 2.0F, (from.y + to.y) / 2.0F};
}

Point leaves_box(const Box& box, const Point& from, const Point& to) {
  float share = 1.0F;
  const auto limit = [&](float a, float b, float low, float high) {
    if (b > high && b > a) share = std::min(share, (high - a) / (b - a));
    if (b < low && b < a) share = std::min(share, (a - low) / (a - b));
  };
  limit(from.x, to.x, box.corner.x, box.right());
  limit(from.y, to.y, box.corner.y, box.bottom());
  share = std::clamp(share, 0.0F, 1.0F);
  return {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
}

bool cross(const Point& a, const Point& b, const Point& c, const Point& d) {
  return side_of(a, b, c) * side_of(a, b, d) < 0.0F && side_of(c, d, a) * side_of(c, d, b) < 0.0F;
}

}  // namespace riserun::gui
