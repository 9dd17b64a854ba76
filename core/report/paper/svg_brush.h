// A page as Scalable Vector Graphics. Source: W3C SVG 1.1 (second edition), chapters 9 to 11.
#pragma once

#include "report/paper/brush.h"

#include <string>

namespace riserun::report {

class SvgBrush : public Brush {
 public:
  void fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) override;
  void stroke(const std::vector<PagePoint>& way, bool closed, Ink ink, double width, Line line) override;
  void words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) override;

  /// The whole element, so many points wide and high.
  /// @param title  what it shows, for who does not see it
  /// @param own_file  with its name space, its measure in points and its ground, to stand by itself
  std::string svg(double width, double height, const std::string& title, bool own_file) const;

 private:
  std::string body_;
};

/// Colours of the classes that the elements have, for where it is dark. What stands in the elements is the light.
std::string dark_svg_style();

}  // namespace riserun::report
