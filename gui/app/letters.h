// What has been drawn of letters in a frame, for tests: none is a scaled picture of another size, none is cut off.
#pragma once

#include <cstdint>
#include <unordered_map>
#include <vector>

struct ImDrawData;
struct ImFont;
struct ImFontAtlas;
struct ImFontGlyph;

namespace riserun::app {

/// Where a letter stands in the window, px.
struct LetterPlace {
  float x = 0.0F;
  float y = 0.0F;
};

struct LettersDrawn {
  int all = 0;
  int scaled = 0;                // not as large as their font was drawn
  float smallest = 0.0F;         // px, of their fonts; 0: none
  std::vector<LetterPlace> cut;  // at their left or right by the edge of what they are in; above and below it is rolled
};

/// Knows the letters of an atlas by where they stand in its picture.
class LetterCount {
 public:
  explicit LetterCount(const ImFontAtlas& atlas);
  LettersDrawn of(const ImDrawData& data) const;

 private:
  struct Known {
    const ImFontGlyph* glyph;
    float font_size;
  };
  std::uint64_t place_of(float u, float v) const;
  /// Whether that part of the picture is a letter without its left or its right side.
  bool is_side_cut_off(float left, float top, float right, float bottom) const;

  float wide_;
  float high_;
  std::unordered_map<std::uint64_t, Known> letters_;  // by the corner where each begins
};

}  // namespace riserun::app
