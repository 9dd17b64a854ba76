#include "report/paper/picture_file.h"

#include "report/paper/cairo_brush.h"
#include "report/paper/svg_brush.h"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace riserun::report {

namespace {

constexpr double kEdge = 12.0;            // points around
constexpr double kPixels = 2.0;           // a point
constexpr double kMostPixels = 16'000.0;  // a side; Cairo's images go to 32,767

double height_of(const std::vector<Picture>& pictures) {
  double height = 2.0 * kEdge;
  for (const Picture& picture : pictures) height += picture.height();
  return height;
}

void paint_all(const std::vector<Picture>& pictures, double width, Brush& brush) {
  double down = kEdge;
  for (const Picture& picture : pictures) {
    paint_picture(picture, {kEdge, down}, width, brush);
    down += picture.height();
  }
}

void paint_on(const CairoSurface& surface, const std::vector<Picture>& pictures, double width, double pixels) {
  const std::unique_ptr<cairo_t, CairoFree> cairo(cairo_create(surface.get()));
  cairo_scale(cairo.get(), pixels, pixels);
  cairo_set_source_rgb(cairo.get(), 1.0, 1.0, 1.0);
  cairo_paint(cairo.get());
  const std::unique_ptr<PangoLayout, CairoFree> layout(pango_cairo_create_layout(cairo.get()));
  CairoBrush brush(cairo.get(), layout.get());
  paint_all(pictures, width, brush);
}

}  // namespace

const char* ending_of(PictureForm form) {
  return form == PictureForm::svg ? "svg" : form == PictureForm::png ? "png" : "pdf";
}

std::string picture_file(const std::vector<Picture>& pictures, double width, PictureForm form) {
  const double wide = width + 2.0 * kEdge;
  const double high = height_of(pictures);
  if (form == PictureForm::svg) {
    SvgBrush brush;
    paint_all(pictures, width, brush);
    return brush.svg(wide, high, pictures.empty() ? "" : pictures.front().title, true);
  }
  if (form == PictureForm::png) {
    const double pixels = std::min(kPixels, kMostPixels / std::max(wide, high));
    const CairoSurface image(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(wide * pixels)),
                                                        static_cast<int>(std::ceil(high * pixels))));
    paint_on(image, pictures, width, pixels);
    return png_of(image);
  }
  std::string bytes;
  const CairoSurface page = pdf_surface(bytes, wide, high);
  paint_on(page, pictures, width, 1.0);
  cairo_surface_finish(page.get());
  const cairo_status_t status = cairo_surface_status(page.get());
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
  return bytes;
}

}  // namespace riserun::report
