// Cairo's surfaces and what paints on them: for pages and for single drawings.
#pragma once

#include "report/paper/brush.h"

#include <memory>
#include <string>
#include <vector>

// Cairo's and Pango's own names, so that their headers stay out of ours.
struct _cairo;
struct _cairo_surface;
struct _PangoLayout;

namespace riserun::report {

struct CairoFree {
  void operator()(_cairo_surface* p) const;
  void operator()(_cairo* p) const;
  void operator()(_PangoLayout* p) const;
};

using CairoSurface = std::unique_ptr<_cairo_surface, CairoFree>;

/// A PDF that is written into `bytes`, which must outlive it; points.
CairoSurface pdf_surface(std::string& bytes, double width, double height);
/// The bytes of a PNG of an image surface.
/// @throws std::runtime_error when it could not be made
std::string png_of(const CairoSurface& image);

/// Of PDF 1.4 and later, by Cairo; words by Pango, so that they stay words.
class CairoBrush : public Brush {
 public:
  CairoBrush(_cairo* cairo, _PangoLayout* layout) : cairo_(cairo), layout_(layout) {}

  void fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) override;
  void stroke(const std::vector<PagePoint>& points, bool closed, Ink ink, double width, Line line) override;
  void words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) override;

 private:
  void way(const std::vector<PagePoint>& points) const;
  void set(Ink ink, double opacity) const;

  _cairo* cairo_;
  _PangoLayout* layout_;
};

}  // namespace riserun::report
