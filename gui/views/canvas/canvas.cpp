#include "gui/views/canvas/canvas.h"

#include <algorithm>
#include <cmath>

namespace riserun::views {

Lens zoomed(Lens lens, float factor, const gui::Point& still, float least) {
  const gui::Point under = lens.on_canvas(still);
  lens.zoom = std::clamp(lens.zoom * factor, std::min(least, lens.zoom), kMostZoom);
  lens.pan = {under.x - (still.x - lens.left) / (lens.zoom * lens.scale),
              under.y - (still.y - lens.top) / (lens.zoom * lens.scale)};
  return lens;
}

float least_zoom(const Lens& lens, const gui::Box& all, const PixelBox& screen) {
  return std::clamp(0.5F * fitted(lens, all, screen).zoom, kLeastZoom, 1.0F);
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

}  // namespace riserun::views
