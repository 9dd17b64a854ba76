#include "gui/app/letters.h"

#include <imgui.h>

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

/// A letter is two triangles, of which the first has its upper left and its lower right corner.
LettersDrawn LetterCount::of(const ImDrawData& data) const {
  constexpr float kOff = 0.05F;  // px
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
        if (known == letters_.end()) continue;
        const ImFontGlyph& glyph = *known->second.glyph;
        if (place_of(last.uv.x, last.uv.y) != place_of(glyph.U1, glyph.V1)) continue;
        ++drawn.all;
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
