// The window's colours, by what they are for, light and dark. Every pair of text on ground that a view may draw stands
// in text_pairs(), and a test holds each against the contrast that it needs. Fluids are coloured after ASME A13.1 (2007
// and later): water that is not for drinking green, compressed air blue, both lettered in white.
#pragma once

#include "gui/model/canvas/view_state.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace riserun::views {

/// What a colour is for.
enum class Ink : std::uint8_t {
  ground,         // behind everything
  panel,          // of a panel, a list, a menu
  field,          // of an entry field
  field_over,     // ... under the pointer
  pressed,        // of what is chosen
  line,           // between things
  text,           // what is read
  faint_text,     // what goes with it: units, hints
  stale_text,     // of a plan that no longer fits what is typed
  accent,         // a link, a mark, the focus
  accent_ground,  // of the chosen sheet, of a button that acts
  accent_text,
  good,
  caution,
  refused,
  good_ground,
  caution_ground,
  refused_ground,
  stale_ground,  // of a plan that no longer fits what is typed
  status_text,   // on the four grounds above
  water,         // ASME A13.1
  water_text,
  air,  // ASME A13.1
  air_text,
  water_pale,   // a body of water, where things are drawn in it
  sheet_metal,  // walls in section
  part_body,    // a fitting's body
  part_bore,    // the way through it
  part_edge,
  card,      // behind a part with its words
  card_bin,  // ... that comes from the bin
  count
};

struct Color {
  float red = 0.0F, green = 0.0F, blue = 0.0F, alpha = 1.0F;  // sRGB, 0 to 1
  auto operator<=>(const Color&) const = default;
};

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
