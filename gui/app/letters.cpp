#include "gui/app/letters.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::app {

LetterCount::LetterCount(const ImFontAtlas& atlas)
    : wide_(static_cast<float>(atlas.TexWidth)), high_(static_cast<float>(atlas.TexHeight)) {
  for (const ImFont* font : atlas.Fonts)
    for (const ImFontGlyph& glyph : font->Glyphs)
      if (glyph.Visible) letters_[place_of(glyph.U0, glyph.V0)] = {&glyph, font->FontSize};
}

std::uint64_t LetterCount::place_of(float u, float v) const {
  return (static_cast<std::uint64_t>(std::lround(u * wide_)) << 32U) |
         static_cast<std::uint64_t>(std::lround(v * high_));
}

bool LetterCount::is_side_cut_off(float left, float top, float right, float bottom) const {
  if (right <= left || bottom <= top) return false;
  const float off = 0.05F / wide_;
  const auto within = [&](const auto& each) {
    const ImFontGlyph& glyph = *each.second.glyph;
    return left >= glyph.U0 - off && right <= glyph.U1 + off && top >= glyph.V0 - off && bottom <= glyph.V1 + off &&
           right - left < glyph.U1 - glyph.U0 - off;
  };
  return std::any_of(letters_.begin(), letters_.end(), within);
}

/// A letter is two triangles, of which the first has its upper left and its lower right corner.
LettersDrawn LetterCount::of(const ImDrawData& data) const {
  constexpr float kOff = 0.05F;  // px
  constexpr float kRim = 1.0F;   // px of a letter's picture that are as good as bare
  LettersDrawn drawn;
  for (int list = 0; list < data.CmdListsCount; ++list) {
    const ImDrawList& shapes = *data.CmdLists[list];
    for (const ImDrawCmd& command : shapes.CmdBuffer) {
      for (unsigned int i = 0; i + 2 < command.ElemCount; i += 3) {
        const auto vertex = [&](unsigned int corner) -> const ImDrawVert& {
          const ImDrawIdx index = shapes.IdxBuffer[static_cast<int>(command.IdxOffset + i + corner)];
          return shapes.VtxBuffer[static_cast<int>(command.VtxOffset + index)];
        };
        const ImDrawVert& first = vertex(0);
        const ImDrawVert& last = vertex(2);
        const auto known = letters_.find(place_of(first.uv.x, first.uv.y));
        if (known == letters_.end() ||
            place_of(last.uv.x, last.uv.y) != place_of(known->second.glyph->U1, known->second.glyph->V1)) {
          if (is_side_cut_off(first.uv.x, first.uv.y, last.uv.x, last.uv.y))
            drawn.cut.push_back({first.pos.x, first.pos.y});
          continue;
        }
        const ImFontGlyph& glyph = *known->second.glyph;
        ++drawn.all;
        const ImVec4& sight = command.ClipRect;  // left, top, right, bottom
        const bool in_sight = first.pos.x < sight.z && last.pos.x > sight.x && first.pos.y < sight.w &&
                              last.pos.y > sight.y && sight.z > sight.x;
        if (in_sight && (first.pos.x < sight.x - kRim || last.pos.x > sight.z + kRim))
          drawn.cut.push_back({first.pos.x, first.pos.y});
        const float size = known->second.font_size;
        if (drawn.smallest == 0.0F || size < drawn.smallest) drawn.smallest = size;
        if (std::abs((last.pos.x - first.pos.x) - (glyph.X1 - glyph.X0)) > kOff ||
            std::abs((last.pos.y - first.pos.y) - (glyph.Y1 - glyph.Y0)) > kOff)
          ++drawn.scaled;
      }
    }
  }
  return drawn;
}

}  // namespace riserun::app
