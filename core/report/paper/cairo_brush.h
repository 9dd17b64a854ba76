// Cairo's surfaces and what paints on them: for pages and for single drawings.
#pragma once

#include "report/paper/brush.h"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <vector>

namespace riserun::report {

struct CairoFree {
  void operator()(cairo_surface_t* p) const { cairo_surface_destroy(p); }
  void operator()(cairo_t* p) const { cairo_destroy(p); }
  void operator()(PangoLayout* p) const { g_object_unref(p); }
};

/// Adds to a std::string what Cairo writes.
cairo_status_t take_bytes(void* bytes, const unsigned char* data, unsigned int length);

/// Of PDF 1.4 and later, by Cairo; words by Pango, so that they stay words.
class CairoBrush : public Brush {
 public:
  CairoBrush(cairo_t* cairo, PangoLayout* layout) : cairo_(cairo), layout_(layout) {}

  void fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) override;
  void stroke(const std::vector<PagePoint>& points, bool closed, Ink ink, double width, Line line) override;
  void words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) override;

 private:
  void way(const std::vector<PagePoint>& points) const;
  void set(Ink ink, double opacity) const;

  cairo_t* cairo_;
  PangoLayout* layout_;
};

}  // namespace riserun::report
