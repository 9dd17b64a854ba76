#include "report/paper/pages.h"

#include "quantity/printable.h"
#include "report/paper/cairo_brush.h"

#include <cairo-pdf.h>
#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace riserun::report {

namespace {

constexpr double kMargin = 42.0;
constexpr double kBox = 10.0;
constexpr double kFormRow = 20.0;
constexpr double kGap = 8.0;
constexpr double kLeastTyped = 7.0;  // points, that an eye reads at arm's length
constexpr double kMostTyped = 11.0;
constexpr double kLetterWidth = 0.61;     // of a letter of one width, to its size in points: a little more than any has
constexpr double kOfPango = 72.0 / 96.0;  // Pango counts 96 of its points to 72 of the page
constexpr double kLineHeight = 1.2;       // to the same
constexpr std::size_t kBelowHeading = 4;  // lines, with its own

}  // namespace

struct Pages::Surface {
  std::string bytes;
  CairoSurface surface;
  std::unique_ptr<cairo_t, CairoFree> cairo;
  std::unique_ptr<PangoLayout, CairoFree> layout;
  Letters letters;

  void set(const std::string& words, const std::string& font, double wide) const {
    PangoFontDescription* description = pango_font_description_from_string(font.c_str());
    pango_layout_set_font_description(layout.get(), description);
    pango_font_description_free(description);
    pango_layout_set_width(layout.get(), wide > 0.0 ? static_cast<int>(wide * PANGO_SCALE) : -1);
    pango_layout_set_text(layout.get(), words.c_str(), -1);
  }
};

Pages::Pages(Paper paper, std::string title, std::string at_foot, bool headed)
    : paper_(paper),
      title_(std::move(title)),
      at_foot_(std::move(at_foot)),
      headed_(headed),
      drawing_(std::make_unique<Surface>()) {
  drawing_->surface = pdf_surface(drawing_->bytes, paper.width, paper.height);
  cairo_pdf_surface_set_metadata(drawing_->surface.get(), CAIRO_PDF_METADATA_TITLE, title_.c_str());
  drawing_->cairo.reset(cairo_create(drawing_->surface.get()));
  drawing_->layout.reset(pango_cairo_create_layout(drawing_->cairo.get()));
  pango_layout_set_wrap(drawing_->layout.get(), PANGO_WRAP_WORD_CHAR);
  head();
}

Pages::~Pages() = default;

void Pages::heading(const std::string& words) {
  const double high = height_of(words, "Sans Bold 12", width());
  room_for(high + 40.0);  // a heading does not stand alone at the foot of a page
  down_ += 8.0;
  put(words, "Sans Bold 12", kMargin, width());
  down_ += high + 4.0;
}

void Pages::sentence(const std::string& words) {
  const double high = height_of(words, "Sans 9", width());
  room_for(high);
  put(words, "Sans 9", kMargin, width());
  down_ += high + 4.0;
}

void Pages::row(const std::string& count, const std::string& what, const std::string& beside,
                const std::string& under) {
  constexpr double kCount = 30.0;
  constexpr double kBeside = 92.0;
  const double left = kMargin + kBox + kGap + kCount;
  const double wide = width() - kBox - kGap - kCount - kBeside - kGap;
  const double first = height_of(what, "Sans 10", wide);
  // A row stays whole: a box on one page and its part on the next is ticked twice or never.
  const double second = under.empty() ? 0.0 : height_of(under, "Sans 8", wide);
  room_for(first + second + 5.0);
  cairo_t* cairo = drawing_->cairo.get();
  cairo_set_line_width(cairo, 0.8);
  cairo_rectangle(cairo, kMargin, down_ + 1.5, kBox, kBox);
  cairo_stroke(cairo);
  put(count, "Sans 10", kMargin + kBox + kGap, kCount);
  put(what, "Sans 10", left, wide);
  put(beside, "Sans Bold 10", paper_.width - kMargin - kBeside, kBeside);
  down_ += first;
  if (!under.empty()) put(under, "Sans 8", left, wide);
  down_ += second + 5.0;
}

void Pages::tick(const std::string& words) {
  const double left = kMargin + kBox + kGap;
  const double wide = width() - kBox - kGap;
  const double high = height_of(words, "Sans 8", wide);
  room_for(high + 3.0);
  cairo_set_line_width(drawing_->cairo.get(), 0.8);
  cairo_rectangle(drawing_->cairo.get(), kMargin, down_ + 0.5, kBox - 1.0, kBox - 1.0);
  cairo_stroke(drawing_->cairo.get());
  put(words, "Sans 8", left, wide);
  down_ += high + 3.0;
}

void Pages::typed(const std::vector<TypedLine>& lines, std::size_t columns, bool on_one_page) {
  double size = std::min(kMostTyped, width() / (static_cast<double>(columns) * kLetterWidth));
  const double room = paper_.height - kMargin - down_;
  if (on_one_page) size = std::min(size, room / (static_cast<double>(lines.size() + 1) * kLineHeight));
  size = std::max(size, kLeastTyped);
  for (std::size_t row = 0; row < lines.size(); ++row) {
    const TypedLine& line = lines[row];
    // A heading does not stand alone at the foot of a page.
    if (line.bold) room_for(static_cast<double>(std::min(lines.size() - row, kBelowHeading)) * size * kLineHeight);
    const std::string font = fmt::format("Monospace{} {:.2f}", line.bold ? " Bold" : "", size * kOfPango);
    // A name may be longer than any line: it goes on below, not over the edge.
    const bool too_long = quantity::count_characters(line.text) > columns;
    const double high = too_long ? height_of(line.text, font, width()) : size * kLineHeight;
    room_for(high);
    put(line.text, font, kMargin, too_long ? width() : 0.0);
    down_ += high;
  }
}

void Pages::picture(const Picture& picture) {
  room_for(picture.height());
  CairoBrush brush(drawing_->cairo.get(), drawing_->layout.get());
  paint_picture(picture, {kMargin, down_}, width(), brush);
  cairo_set_source_rgb(drawing_->cairo.get(), 0.0, 0.0, 0.0);
  down_ += picture.height();
}

void Pages::forms(const std::string& title, const std::vector<Form>& forms) {
  double high = height_of(title, "Sans Bold 12", width()) + 12.0;
  for (const Form& each : forms) high += kFormRow * static_cast<double>(each.rows.size() + 1) + kGap;
  if (high <= room().height) room_for(high);
  heading(title);
  for (const Form& each : forms) form(each.heads, each.rows);
}

void Pages::form(const std::vector<std::string>& heads, const std::vector<std::vector<std::string>>& rows) {
  const double wide = width() / static_cast<double>(heads.size());
  const auto line = [&](double x1, double y1, double x2, double y2) {
    cairo_move_to(drawing_->cairo.get(), x1, y1);
    cairo_line_to(drawing_->cairo.get(), x2, y2);
    cairo_set_line_width(drawing_->cairo.get(), 0.6);
    cairo_stroke(drawing_->cairo.get());
  };
  const auto row = [&](const std::vector<std::string>& cells, const std::string& font) {
    room_for(kFormRow);
    down_ += 6.0;
    for (std::size_t i = 0; i < cells.size(); ++i) put(cells[i], font, kMargin + wide * static_cast<double>(i), wide);
    down_ += kFormRow - 6.0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const double left = kMargin + wide * static_cast<double>(i);
      line(left, down_, left + wide - kGap, down_);
    }
  };
  row(heads, "Sans Bold 8");
  for (const std::vector<std::string>& cells : rows) row(cells, "Sans 9");
  down_ += kGap;
}

Room Pages::room() const { return {width(), paper_.height - 2.0 * kMargin}; }

const Letters& Pages::letters() const { return drawing_->letters; }

void Pages::new_page() {
  foot();
  cairo_show_page(drawing_->cairo.get());
  head();
}

std::string Pages::finish() {
  foot();
  drawing_->layout.reset();
  drawing_->cairo.reset();
  cairo_surface_finish(drawing_->surface.get());
  const cairo_status_t status = cairo_surface_status(drawing_->surface.get());
  if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error(cairo_status_to_string(status));
  return std::move(drawing_->bytes);
}

double Pages::width() const { return paper_.width - 2.0 * kMargin; }

double Pages::height_of(const std::string& words, const std::string& font, double wide) {
  drawing_->set(words, font, wide);
  int high = 0;
  pango_layout_get_size(drawing_->layout.get(), nullptr, &high);
  return static_cast<double>(high) / PANGO_SCALE;
}

void Pages::put(const std::string& words, const std::string& font, double left, double wide) {
  if (words.empty()) return;
  drawing_->set(words, font, wide);
  cairo_move_to(drawing_->cairo.get(), left, down_);
  pango_cairo_show_layout(drawing_->cairo.get(), drawing_->layout.get());
}

void Pages::head() {
  down_ = kMargin;
  if (!headed_) return;
  const double high = height_of(title_, "Sans Bold 15", width());
  put(title_, "Sans Bold 15", kMargin, width());
  down_ += high + 6.0;
}

void Pages::foot() {
  const double back = down_;
  down_ = paper_.height - kMargin + 8.0;
  drawing_->set(fmt::format("page {}   {}", ++number_, at_foot_), "Sans 8", width());
  // A long name is cut off, as below the foot there is no page.
  pango_layout_set_height(drawing_->layout.get(), 0);
  pango_layout_set_ellipsize(drawing_->layout.get(), PANGO_ELLIPSIZE_MIDDLE);
  cairo_move_to(drawing_->cairo.get(), kMargin, down_);
  pango_cairo_show_layout(drawing_->cairo.get(), drawing_->layout.get());
  pango_layout_set_ellipsize(drawing_->layout.get(), PANGO_ELLIPSIZE_NONE);
  down_ = back;
}

void Pages::room_for(double high) {
  if (down_ + high > paper_.height - kMargin) new_page();
}

}  // namespace riserun::report
