// The lettering, in the few sizes that the window uses, each drawn at the screen's own resolution.
#pragma once

#include <array>

struct ImFont;

namespace riserun::views {

/// Of plain lettering, in points: words that are zoomed take the next smaller of these and are never scaled. The least
/// is the least that the window has.
inline constexpr std::array<float, 7> kPlainSizes = {11.0F, 12.0F, 13.0F, 15.0F, 16.0F, 20.0F, 26.0F};
inline constexpr std::size_t kSmallSize = 2;  // rows of the sizes
inline constexpr std::size_t kBodySize = 4;

struct Fonts {
  std::array<ImFont*, kPlainSizes.size()> plain{};
  ImFont* small = nullptr;
  ImFont* body = nullptr;
  ImFont* strong = nullptr;
  ImFont* large = nullptr;  // read from six feet
  ImFont* fixed = nullptr;  // the job file
};

/// Puts DejaVu into ImGui's atlas, drawn by FreeType for that scale; whatever was in it before is gone. Where DejaVu is
/// not installed, ImGui's own letters stand in.
Fonts load_fonts(float scale);

}  // namespace riserun::views
