// The colours of drawings and of what stands round them, by what they are for, light and dark. Fluids are coloured
// after ASME A13.1 (2007 and later): water that is not for drinking green, compressed air blue, both lettered in white.
#pragma once

#include <compare>
#include <cstdint>

namespace riserun::report {

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
  rubber,       // a hose's
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

/// As six hexadecimal digits: 0xRRGGBB.
std::uint32_t hex_of(Ink ink, bool dark);
Color color_of(Ink ink, bool dark);

}  // namespace riserun::report
