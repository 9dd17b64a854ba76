// Between the canvas, in points, and the screen.
#pragma once

#include "gui/model/canvas/layout.h"
#include "gui/model/canvas/view_state.h"
#include "gui/views/drawing/paint_drawing.h"

namespace riserun::views {

struct Lens {
  float left = 0.0F, top = 0.0F;  // px, of the canvas' corner on the screen
  gui::Point pan;                 // points, of the canvas' spot that lies in that corner
  float zoom = 1.0F;
  float scale = 1.0F;  // px a point at zoom 1

  float px(float points) const { return points * zoom * scale; }
  gui::Point on_screen(const gui::Point& p) const { return {left + px(p.x - pan.x), top + px(p.y - pan.y)}; }
  gui::Point on_canvas(const gui::Point& p) const {
    return {pan.x + (p.x - left) / (zoom * scale), pan.y + (p.y - top) / (zoom * scale)};
  }
};

inline constexpr float kLeastZoom = 0.05F;
inline constexpr float kMostZoom = 8.0F;

/// The lens with another zoom, no less than `least`; what lies under `still` on the screen stays there.
Lens zoomed(Lens lens, float factor, const gui::Point& still, float least = kLeastZoom);
/// What lies in no more than half of the screen's box is small enough.
float least_zoom(const Lens& lens, const gui::Box& all, const PixelBox& screen);
/// All of the box in the middle of the screen's box, at no more than zoom 1.25.
Lens fitted(Lens lens, const gui::Box& all, const PixelBox& screen);

}  // namespace riserun::views
