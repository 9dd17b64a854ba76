// Spots, boxes and pins on the canvas, in points at content scale 1; y grows downwards.
#pragma once

namespace riserun::gui {

struct Point {
  float x = 0.0F;
  float y = 0.0F;
  bool operator==(const Point&) const = default;
};

struct Size {
  float width = 0.0F;
  float height = 0.0F;
};

struct Box {
  Point corner;  // upper left
  Size size;
  float right() const { return corner.x + size.width; }
  float bottom() const { return corner.y + size.height; }
};

/// Whether less than that much room is between the two.
inline bool too_close(const Box& a, const Box& b, float gap) {
  return a.corner.x < b.right() + gap && b.corner.x < a.right() + gap && a.corner.y < b.bottom() + gap &&
         b.corner.y < a.bottom() + gap;
}
inline bool overlap(const Box& a, const Box& b) { return too_close(a, b, 0.0F); }

struct PlacedPin {
  Point where;      // on the edge of its node
  Point direction;  // unit vector out of the node
};

inline constexpr float kNodeGap = 28.0F;  // at least that much between two nodes that the user has not moved
inline constexpr float kLaneGap = 36.0F;
inline constexpr float kPinPitch = 22.0F;  // between two pins on one edge of a vessel

}  // namespace riserun::gui
