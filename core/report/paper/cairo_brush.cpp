#include "report/paper/cairo_brush.h"

#include "quantity/printable.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <stdexcept>

namespace riserun::report {

namespace {

cairo_status_t take_bytes(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

void CairoFree::operator()(_cairo_surface* p) const { cairo_surface_destroy(p); }
void CairoFree::operator()(_cairo* p) const { cairo_destroy(p); }
void CairoFree::operator()(_PangoLayout* p) const { g_object_unref(p); }

CairoSurface pdf_surface(std::string& bytes, double width, double height) {
  return CairoSurface(cairo_pdf_surface_create_for_stream(&take_bytes, &bytes, width, height));
}

std::string png_of(const CairoSurface& image) {
  std::string bytes;
  const cairo_status_t status = cairo_surface_write_to_png_stream(image.get(), &take_bytes, &bytes);
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
  return bytes;
}

void CairoBrush::fill(const std::vector<PagePoint>& outline, Ink ink, double opacity) {
  way(outline);
  set(ink, opacity);
  cairo_fill(cairo_);
}

void CairoBrush::stroke(const std::vector<PagePoint>& points, bool closed, Ink ink, double width, Line line) {
  way(points);
  if (closed) cairo_close_path(cairo_);
  set(ink, 1.0);
  cairo_set_line_width(cairo_, width);
  cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
  const std::vector<double> dashes = dashes_of(line);
  cairo_set_dash(cairo_, dashes.data(), static_cast<int>(dashes.size()), 0.0);
  cairo_stroke(cairo_);
  cairo_set_dash(cairo_, nullptr, 0, 0.0);
}

void CairoBrush::words(PagePoint at, Anchor anchor, const std::string& text, Ink ink, const Lettering& lettering) {
  if (text.empty()) return;
  PangoFontDescription* font = pango_font_description_from_string(lettering.bold ? "Sans Bold" : "Sans");
  pango_font_description_set_absolute_size(font, lettering.size * PANGO_SCALE);
  pango_layout_set_font_description(layout_, font);
  pango_font_description_free(font);
  pango_layout_set_width(layout_, -1);
  pango_layout_set_text(layout_, quantity::printable(text).c_str(), -1);
  int of_layout = 0;  // as it is drawn: on an image hinted letters are wider than on a page
  if (anchor != Anchor::start) pango_layout_get_size(layout_, &of_layout, nullptr);
  const double wide = static_cast<double>(of_layout) / PANGO_SCALE;
  const double base = static_cast<double>(pango_layout_get_baseline(layout_)) / PANGO_SCALE;
  set(ink, 1.0);
  cairo_move_to(cairo_, at.x - (anchor == Anchor::middle ? wide / 2.0 : wide), at.y - base);
  pango_cairo_show_layout(cairo_, layout_);
}

void CairoBrush::way(const std::vector<PagePoint>& points) const {
  cairo_new_path(cairo_);
  for (const PagePoint& point : points) cairo_line_to(cairo_, point.x, point.y);
}

void CairoBrush::set(Ink ink, double opacity) const {
  const Color color = color_of(ink, false);
  cairo_set_source_rgba(cairo_, color.red, color.green, color.blue, opacity);
}

}  // namespace riserun::report
