#include "report/paper/letters.h"

#include "quantity/printable.h"

#include <pango/pangocairo.h>

namespace riserun::report {

namespace {

struct Unref {
  void operator()(void* object) const { g_object_unref(object); }
};

}  // namespace

struct Letters::Measure {
  std::unique_ptr<PangoContext, Unref> context{pango_font_map_create_context(pango_cairo_font_map_get_default())};
  std::unique_ptr<PangoLayout, Unref> layout{pango_layout_new(context.get())};
};

Letters::Letters() : measure_(std::make_unique<Measure>()) {}
Letters::~Letters() = default;

double Letters::width_of(const std::string& words, const Lettering& lettering) const {
  PangoFontDescription* font = pango_font_description_from_string(lettering.bold ? "Sans Bold" : "Sans");
  pango_font_description_set_absolute_size(font, lettering.size * PANGO_SCALE);
  pango_layout_set_font_description(measure_->layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_text(measure_->layout.get(), quantity::printable(words).c_str(), -1);
  int wide = 0;
  pango_layout_get_size(measure_->layout.get(), &wide, nullptr);
  return static_cast<double>(wide) / PANGO_SCALE;
}

}  // namespace riserun::report
