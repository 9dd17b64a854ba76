// Spots, boxes and pins on the canvas, in points at content scale 1; y grows downwards.
#pragma once

#include <algorithm>

namespace riserun::gui {

struct Point {
  float x = 0.0F;
  float y = 0.0F;
  bool operator==(const Point&) const = default;
};

struct Size {
  float width = 0.0F;
  float height = 0.0F;
  bool operator==(const Size&) const = default;
};

struct Box {
  Point corner;  // upper left
  Size size;
  float right() const { return corner.x + size.width; }
  float bottom() const { return corner.y + size.height; }
  Point middle() const { return {corner.x + size.width / 2.0F, corner.y + size.height / 2.0F}; }
  Box at(const Point& offset) const { return {{corner.x + offset.x, corner.y + offset.y}, size}; }
};

inline Box between(float left, float top, float right, float bottom) {
  return {{left, top}, {right - left, bottom - top}};
}

/// Round both.
inline Box around(const Box& a, const Box& b) {
  return between(std::min(a.corner.x, b.corner.x), std::min(a.corner.y, b.corner.y), std::max(a.right(), b.right()),
                 std::max(a.bottom(), b.bottom()));
}

inline bool overlap(const Box& a, const Box& b) {
  return a.corner.x < b.right() && b.corner.x < a.right() && a.corner.y < b.bottom() && b.corner.y < a.bottom();
}

struct PlacedPin {
  Point where;
  Point direction;  // unit vector out of the node
};

}  // namespace riserun::gui
