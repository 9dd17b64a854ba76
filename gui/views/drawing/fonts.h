// The lettering, in the few sizes that the window uses, each drawn at the screen's own resolution.
#pragma once

struct ImFont;

namespace riserun::views {

struct Fonts {
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
