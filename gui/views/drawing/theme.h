// The window's colours, light and dark. Every pair of text on ground that a view may draw stands in text_pairs(), and a
// test holds each against the contrast that it needs.
#pragma once

#include "gui/model/canvas/view_state.h"
#include "report/drawing/ink.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace riserun::views {

using report::Color;
using report::Ink;

class Theme {
 public:
  gui::Looks looks = gui::Looks::light;
  const Color& operator[](Ink ink) const { return colors_[static_cast<std::size_t>(ink)]; }
  Color& operator[](Ink ink) { return colors_[static_cast<std::size_t>(ink)]; }

 private:
  std::array<Color, static_cast<std::size_t>(Ink::count)> colors_{};
};

const Theme& theme_of(gui::Looks looks);

/// Text that is drawn on a ground somewhere in the window.
struct TextPair {
  Ink text;
  Ink ground;
};
std::span<const TextPair> text_pairs();

/// Contrast of two opaque colours, 1 to 21, by relative luminance. Source: W3C WCAG 2.1, "contrast ratio".
double contrast(const Color& a, const Color& b);

/// The same colour at another opacity.
Color faded(Color color, float alpha);
/// As ImGui packs it.
std::uint32_t packed(const Color& color);

/// Sets ImGui's own colours and measures to the theme, at a scale of text and spaces.
void apply(const Theme& theme, float scale);

}  // namespace riserun::views
