#include "gui/views/canvas/canvas_words.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

CanvasWords::CanvasWords(const Scene& scene, const Lens& lens)
    : scene_(scene), zoom_(lens.zoom), list_(*ImGui::GetWindowDrawList()) {}

ImFont& CanvasWords::font(float points) const {
  constexpr float kRounding = 0.01F;
  std::size_t step = 0;
  while (step + 1 < kPlainSizes.size() && kPlainSizes[step + 1] <= points * zoom_ + kRounding) ++step;
  return *scene_.fonts.plain[step];
}

float CanvasWords::line(float points) const { return font(points).FontSize; }

ImVec2 CanvasWords::measure(float points, const std::string& text, float wrap) const {
  const ImFont& drawn = font(points);
  const std::string lines = wrap > 0.0F ? at_blanks(drawn, text, wrap) : text;
  return drawn.CalcTextSizeA(drawn.FontSize, FLT_MAX, wrap, lines.c_str());
}

void CanvasWords::put(float points, ImVec2 at, Ink ink, const std::string& text, const PixelBox& room,
                      bool wraps) const {
  ImFont& drawn = font(points);
  const float wide = room.right - at.x;
  const std::string shown =
      fitting(drawn, wraps ? at_blanks(drawn, text, wide) : text, wide, room.bottom - at.y, wraps);
  if (shown.empty()) return;
  const ImVec2 corner{std::floor(at.x), std::floor(at.y)};
  const float wrap = wraps ? wide : 0.0F;
  list_.AddText(&drawn, drawn.FontSize, corner, packed(scene_.theme[ink]), shown.c_str(), nullptr, wrap);
  const ImVec2 size = drawn.CalcTextSizeA(drawn.FontSize, FLT_MAX, wrap, shown.c_str());
  note_text(scene_, shown, {corner.x, corner.y, corner.x + size.x, corner.y + size.y}, room);
}

bool CanvasWords::plate(float points, ImVec2 middle, Ink ink, Ink ground, const std::string& text, float most) const {
  const ImVec2 size = measure(points, text);
  const float pad = scene_.px(3.0F);
  if (size.x + 2.0F * pad > most) return false;
  const ImVec2 corner{std::floor(middle.x - size.x / 2.0F), std::floor(middle.y - size.y / 2.0F)};
  const PixelBox box{corner.x - pad, corner.y - pad * 0.5F, corner.x + size.x + pad, corner.y + size.y + pad * 0.5F};
  list_.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, packed(scene_.theme[ground]), pad * 0.6F);
  put(points, corner, ink, text, box);
  return true;
}

}  // namespace riserun::views
