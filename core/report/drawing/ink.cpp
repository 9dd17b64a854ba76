#include "report/drawing/ink.h"

#include <cstddef>
#include <iterator>

namespace riserun::report {

namespace {

struct TwoColors {
  Ink ink;
  std::uint32_t light;
  std::uint32_t dark;
};

// Light: a clean bench top under a white lamp. Dark: the same shop at night.
constexpr TwoColors kColors[] = {
    {Ink::ground, 0xF2F1EC, 0x1B1E20},
    {Ink::panel, 0xFBFAF7, 0x24282B},
    {Ink::field, 0xFFFFFF, 0x15181A},
    {Ink::field_over, 0xECEAE2, 0x30363A},
    {Ink::pressed, 0xDDE7E1, 0x2F4139},
    {Ink::line, 0xC9C5B8, 0x454C51},
    {Ink::text, 0x1E2326, 0xECEAE4},
    {Ink::faint_text, 0x565B5C, 0xB0B3B0},
    {Ink::stale_text, 0x646663, 0xA4A7A4},
    {Ink::accent, 0x8A3B12, 0xF0A070},
    {Ink::accent_ground, 0x8A3B12, 0x8A3B12},
    {Ink::accent_text, 0xFFFFFF, 0xFFFFFF},
    {Ink::good, 0x1F6B3A, 0x7FD69A},
    {Ink::caution, 0x7A5200, 0xF0C060},
    {Ink::refused, 0xA31D1D, 0xFF9A8C},
    {Ink::good_ground, 0x1F6B3A, 0x1F6B3A},
    {Ink::caution_ground, 0x805600, 0x805600},
    {Ink::refused_ground, 0xA31D1D, 0xA31D1D},
    {Ink::stale_ground, 0x5E6264, 0x5E6264},
    {Ink::status_text, 0xFFFFFF, 0xFFFFFF},
    {Ink::water, 0x007A45, 0x007A45},
    {Ink::water_text, 0xFFFFFF, 0xFFFFFF},
    {Ink::air, 0x0B57A4, 0x0B57A4},
    {Ink::air_text, 0xFFFFFF, 0xFFFFFF},
    {Ink::water_pale, 0xC4E4D2, 0x1D4A35},
    {Ink::sheet_metal, 0x4B5257, 0xA7AFB4},
    {Ink::part_body, 0xD9D6CB, 0x4A5156},
    {Ink::rubber, 0xB3B4AE, 0x363B3F},
    {Ink::part_bore, 0xFFFFFF, 0x15181A},
    {Ink::part_edge, 0x2B3033, 0xD3D6D4},
    {Ink::card, 0xFFFFFF, 0x2B3034},
    {Ink::card_bin, 0xF4EDDB, 0x3A352A},
};
static_assert(std::size(kColors) == static_cast<std::size_t>(Ink::count));

}  // namespace

std::uint32_t hex_of(Ink ink, bool dark) {
  const TwoColors& colors = kColors[static_cast<std::size_t>(ink)];
  return dark ? colors.dark : colors.light;
}

Color color_of(Ink ink, bool dark) {
  const std::uint32_t hex = hex_of(ink, dark);
  return {static_cast<float>((hex >> 16U) & 0xFFU) / 255.0F, static_cast<float>((hex >> 8U) & 0xFFU) / 255.0F,
          static_cast<float>(hex & 0xFFU) / 255.0F, 1.0F};
}

}  // namespace riserun::report
