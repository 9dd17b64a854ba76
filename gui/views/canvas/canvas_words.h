// Words on the canvas: in the lettering that was drawn for the zoom's own size, never a scaled picture of another, and
// never below what can be read. What does not fit its room is cut short, with dots.
#pragma once

#include "gui/views/canvas/canvas.h"
#include "gui/views/scene/scene.h"

#include <string>

struct ImDrawList;
struct ImFont;
struct ImVec2;

namespace riserun::views {

class CanvasWords {
 public:
  CanvasWords(const Scene& scene, const Lens& lens);

  /// For words that have that many points at a zoom of 1.
  ImFont& font(float points) const;
  float line(float points) const;
  ImVec2 measure(float points, const std::string& text, float wrap = 0.0F) const;

  /// From that corner on, within the room; wrapped at its right edge where asked. Nothing where not even a letter fits.
  void put(float points, ImVec2 at, Ink ink, const std::string& text, const PixelBox& room, bool wraps = false) const;
  /// In the middle, on a plate. False: it would be wider than it may, and nothing is drawn.
  bool plate(float points, ImVec2 middle, Ink ink, Ink ground, const std::string& text, float most) const;

 private:
  const Scene& scene_;
  float zoom_;
  ImDrawList& list_;
};

}  // namespace riserun::views
