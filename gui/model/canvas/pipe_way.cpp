#include "gui/model/canvas/pipe_way.h"

#include <cmath>

namespace riserun::gui {

namespace {

constexpr float kStub = 14.0F;  // points, straight out of a pin
constexpr float kPitch = 9.0F;  // points, between neighbours' turns

bool level(const PlacedPin& pin) { return std::abs(pin.direction.x) > 0.5F; }

/// Both pins look along the same axis.
std::vector<Point> way_along(const PlacedPin& a, const PlacedPin& b, float out) {
  const bool turned = !level(a);
  const auto flip = [&](Point p) { return turned ? Point{p.y, p.x} : p; };
  const Point from = flip(a.where);
  const Point to = flip(b.where);
  const float leaves = flip(a.direction).x;
  const float enters = flip(b.direction).x;
  std::vector<Point> way;
  if (std::abs(from.y - to.y) < 0.5F && (to.x - from.x) * leaves >= 0.0F && leaves * enters < 0.0F) {
    way = {from, to};
  } else if (leaves * enters > 0.0F) {  // round the outside of both
    const float far = leaves > 0.0F ? std::max(from.x, to.x) + out : std::min(from.x, to.x) - out;
    way = {from, {far, from.y}, {far, to.y}, to};
  } else if ((to.x - from.x) * leaves >= 0.0F) {
    const float turn = leaves > 0.0F ? std::min(from.x + out, to.x) : std::max(from.x - out, to.x);
    way = {from, {turn, from.y}, {turn, to.y}, to};
  } else {
    const float first = from.x + leaves * out;
    const float last = to.x + enters * kStub;
    const float middle = (from.y + to.y) / 2.0F;
    way = {from, {first, from.y}, {first, middle}, {last, middle}, {last, to.y}, to};
  }
  for (Point& point : way) point = flip(point);
  return way;
}

}  // namespace

std::vector<Point> pipe_way(const PlacedPin& a, const PlacedPin& b, int lane) {
  const float out = kStub + kPitch * static_cast<float>(lane);
  if (level(a) == level(b)) return way_along(a, b, out);
  const Point first{a.where.x + a.direction.x * out, a.where.y + a.direction.y * out};
  const Point last{b.where.x + b.direction.x * kStub, b.where.y + b.direction.y * kStub};
  const bool meets =
      level(a) ? (b.where.x - a.where.x) * a.direction.x >= 0.0F && (a.where.y - b.where.y) * b.direction.y >= 0.0F
               : (b.where.y - a.where.y) * a.direction.y >= 0.0F && (a.where.x - b.where.x) * b.direction.x >= 0.0F;
  const Point corner = level(a) ? Point{b.where.x, a.where.y} : Point{a.where.x, b.where.y};
  if (meets) return {a.where, corner, b.where};
  const Point turn = level(a) ? Point{first.x, last.y} : Point{last.x, first.y};
  return {a.where, first, turn, last, b.where};
}

}  // namespace riserun::gui
