#include "gui/views/canvas/canvas.h"

#include <algorithm>
#include <cmath>

namespace riserun::views {

Lens zoomed(Lens lens, float factor, const gui::Point& still) {
  const gui::Point under = lens.on_canvas(still);
  lens.zoom = std::clamp(lens.zoom * factor, kLeastZoom, kMostZoom);
  lens.pan = {under.x - (still.x - lens.left) / (lens.zoom * lens.scale),
              under.y - (still.y - lens.top) / (lens.zoom * lens.scale)};
  return lens;
}

Lens fitted(Lens lens, const gui::Box& all, const PixelBox& screen) {
  constexpr float kMargin = 24.0F;  // points
  constexpr float kMostWhenFitted = 1.25F;
  const float wide = all.size.width + 2.0F * kMargin;
  const float high = all.size.height + 2.0F * kMargin;
  lens.zoom = std::clamp(std::min(screen.width() / (wide * lens.scale), screen.height() / (high * lens.scale)),
                         kLeastZoom, kMostWhenFitted);
  lens.pan = {all.corner.x + all.size.width / 2.0F - screen.width() / (2.0F * lens.zoom * lens.scale),
              all.corner.y + all.size.height / 2.0F - screen.height() / (2.0F * lens.zoom * lens.scale)};
  return lens;
}

std::vector<gui::Point> pipe_way(const gui::PlacedPin& a, const gui::PlacedPin& b, int lane) {
  constexpr float kStub = 10.0F;  // points, straight out of a pin
  constexpr float kPitch = 7.0F;  // points, between neighbours' turns
  const gui::Point from = a.where;
  const gui::Point to = b.where;
  if (std::abs(from.y - to.y) < 0.5F && std::abs(a.direction.y) < 0.5F && std::abs(b.direction.y) < 0.5F &&
      (to.x - from.x) * a.direction.x >= 0.0F)
    return {from, to};
  const float out = kStub + kPitch * static_cast<float>(lane);
  const gui::Point first{from.x + a.direction.x * out, from.y + a.direction.y * out};
  const gui::Point last{to.x + b.direction.x * kStub, to.y + b.direction.y * kStub};
  if (std::abs(a.direction.x) > 0.5F && std::abs(b.direction.x) > 0.5F) {
    if ((last.x - first.x) * a.direction.x >= 0.0F) return {from, first, {first.x, to.y}, to};
    const float middle = (from.y + to.y) / 2.0F;
    return {from, first, {first.x, middle}, {last.x, middle}, last, to};
  }
  if (std::abs(a.direction.x) > 0.5F) return {from, {last.x, from.y}, last, to};
  if (std::abs(b.direction.x) > 0.5F) return {from, first, {from.x, to.y}, to};
  return {from, first, {first.x, last.y}, last, to};
}

}  // namespace riserun::views
