#include "gui/views/drawing/fonts.h"

#include <imgui.h>
#include <imgui_freetype.h>

#include <cmath>
#include <filesystem>
#include <string>

namespace riserun::views {

namespace {

// Debian's fonts-dejavu-core, then where other systems keep it.
constexpr const char* kFolders[] = {"/usr/share/fonts/truetype/dejavu/", "/usr/share/fonts/dejavu/",
                                    "/usr/share/fonts/TTF/"};

/// Letters of Europe, and the signs that the window and people's jobs use: fractions, primes, arrows, times, degree.
constexpr ImWchar kRanges[] = {0x0020, 0x024F, 0x0370, 0x03FF, 0x0400, 0x052F, 0x2010, 0x2044, 0x2080,
                               0x2089, 0x2150, 0x215F, 0x2190, 0x2195, 0x2212, 0x2212, 0x2248, 0x2265,
                               0x25A0, 0x25CF, 0x2610, 0x2612, 0x26A0, 0x26A0, 0x2713, 0x2717, 0};

ImFont* load(const std::string& name, float pixels) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  ImFontConfig config;
  config.OversampleH = config.OversampleV = 1;
  config.PixelSnapH = true;
  for (const char* folder : kFolders) {
    const std::string path = folder + name;
    if (std::filesystem::exists(path))
      return atlas.AddFontFromFileTTF(path.c_str(), std::round(pixels), &config, kRanges);
  }
  config.SizePixels = std::round(pixels);
  return atlas.AddFontDefault(&config);
}

}  // namespace

Fonts load_fonts(float scale) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  atlas.Clear();
  atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
  Fonts fonts;
  // The first that is loaded is ImGui's own, for all that says nothing else.
  fonts.body = load("DejaVuSans.ttf", kPlainSizes[kBodySize] * scale);
  for (std::size_t i = 0; i < kPlainSizes.size(); ++i)
    fonts.plain[i] = i == kBodySize ? fonts.body : load("DejaVuSans.ttf", kPlainSizes[i] * scale);
  fonts.small = fonts.plain[kSmallSize];
  fonts.strong = load("DejaVuSans-Bold.ttf", 16.0F * scale);
  fonts.large = load("DejaVuSans-Bold.ttf", 27.0F * scale);
  fonts.fixed = load("DejaVuSansMono.ttf", 15.0F * scale);
  return fonts;
}

}  // namespace riserun::views
