// What a painter of shapes needs of a page: areas, lines and words. Places are points (1/72 in) from the page's upper
// left corner.
#pragma once

#include "report/drawing/drawing.h"
#include "report/paper/letters.h"

#include <string>
#include <vector>

namespace riserun::report {

struct PagePoint {
  double x = 0.0;
  double y = 0.0;
};

/// Where words stand to their place.
enum class Anchor : std::uint8_t { start, middle, end };

class Brush {
 public:
  virtual ~Brush() = default;
  /// An area without an edge.
  virtual void fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) = 0;
  /// @param width  points
  virtual void stroke(const std::vector<PagePoint>& way, bool closed, Ink ink, double width, Line line) = 0;
  /// A line of words; `at` is on its base line. What may not be printed is written as an escape.
  virtual void words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) = 0;
  const Letters& letters() const { return letters_; }

 protected:
  /// Dashes and the gaps between them, in points: of ISO 128-2's lines the ones that still part at this size.
  static std::vector<double> dashes_of(Line line);

 private:
  Letters letters_;
};

}  // namespace riserun::report
