#include "report/paper/list_pdf.h"

#include "report/words/list_words.h"
#include "report/words/plan_keys.h"
#include "report/words/remark_words.h"

#include <cairo-pdf.h>
#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

namespace riserun::report {

namespace {

using plan::Plan;

// PDF points, 1/72 in.
constexpr double kMargin = 42.0;
constexpr double kBox = 10.0;
constexpr double kGap = 8.0;

struct Page {
  double width, height;
};
constexpr Page kLetter{612.0, 792.0};
constexpr Page kA4{595.276, 841.89};

struct Free {
  void operator()(cairo_surface_t* p) const { cairo_surface_destroy(p); }
  void operator()(cairo_t* p) const { cairo_destroy(p); }
  void operator()(PangoLayout* p) const { g_object_unref(p); }
};

/// Writes rows downwards, page after page.
class Pages {
 public:
  Pages(Page page, std::string title) : page_(page), title_(std::move(title)) {
    surface_.reset(cairo_pdf_surface_create_for_stream(&Pages::take, &bytes_, page.width, page.height));
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_TITLE, title_.c_str());
    cairo_.reset(cairo_create(surface_.get()));
    layout_.reset(pango_cairo_create_layout(cairo_.get()));
    pango_layout_set_wrap(layout_.get(), PANGO_WRAP_WORD_CHAR);
    head();
  }

  void heading(const std::string& words) {
    const double high = height_of(words, "Sans Bold 12", width());
    room_for(high + 40.0);  // a heading does not stand alone at the foot of a page
    down_ += 8.0;
    put(words, "Sans Bold 12", kMargin, width());
    down_ += high + 4.0;
  }

  void sentence(const std::string& words) {
    const double high = height_of(words, "Sans 9", width());
    room_for(high);
    put(words, "Sans 9", kMargin, width());
    down_ += high + 4.0;
  }

  /// A box to tick, how many, what, and at the right what it costs or measures.
  void row(const std::string& count, const std::string& what, const std::string& beside, const std::string& under) {
    constexpr double kCount = 30.0;
    constexpr double kBeside = 92.0;
    const double left = kMargin + kBox + kGap + kCount;
    const double wide = width() - kBox - kGap - kCount - kBeside - kGap;
    const double first = height_of(what, "Sans 10", wide);
    // A row stays whole: a box on one page and its part on the next is ticked twice or never.
    const double second = under.empty() ? 0.0 : height_of(under, "Sans 8", wide);
    room_for(first + second + 5.0);
    cairo_set_line_width(cairo_.get(), 0.8);
    cairo_rectangle(cairo_.get(), kMargin, down_ + 1.5, kBox, kBox);
    cairo_stroke(cairo_.get());
    put(count, "Sans 10", kMargin + kBox + kGap, kCount);
    put(what, "Sans 10", left, wide);
    put(beside, "Sans Bold 10", page_.width - kMargin - kBeside, kBeside);
    down_ += first;
    if (!under.empty()) put(under, "Sans 8", left, wide);
    down_ += second + 5.0;
  }

  std::string finish() {
    foot();
    layout_.reset();
    cairo_.reset();
    cairo_surface_finish(surface_.get());
    if (cairo_surface_status(surface_.get()) != CAIRO_STATUS_SUCCESS)
      throw std::runtime_error(cairo_status_to_string(cairo_surface_status(surface_.get())));
    return std::move(bytes_);
  }

 private:
  static cairo_status_t take(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
  }

  double width() const { return page_.width - 2.0 * kMargin; }

  void set(const std::string& words, const char* font, double wide) {
    PangoFontDescription* description = pango_font_description_from_string(font);
    pango_layout_set_font_description(layout_.get(), description);
    pango_font_description_free(description);
    pango_layout_set_width(layout_.get(), static_cast<int>(wide * PANGO_SCALE));
    pango_layout_set_text(layout_.get(), words.c_str(), -1);
  }
  double height_of(const std::string& words, const char* font, double wide) {
    set(words, font, wide);
    int high = 0;
    pango_layout_get_size(layout_.get(), nullptr, &high);
    return static_cast<double>(high) / PANGO_SCALE;
  }
  void put(const std::string& words, const char* font, double left, double wide) {
    if (words.empty()) return;
    set(words, font, wide);
    cairo_move_to(cairo_.get(), left, down_);
    pango_cairo_show_layout(cairo_.get(), layout_.get());
  }

  void head() {
    down_ = kMargin;
    const double high = height_of(title_, "Sans Bold 15", width());
    put(title_, "Sans Bold 15", kMargin, width());
    down_ += high + 6.0;
  }
  void foot() {
    const double back = down_;
    down_ = page_.height - kMargin + 8.0;
    put(fmt::format("page {}", ++number_), "Sans 8", kMargin, width());
    down_ = back;
  }
  void room_for(double high) {
    if (down_ + high <= page_.height - kMargin) return;
    foot();
    cairo_show_page(cairo_.get());
    head();
  }

  Page page_;
  std::string title_;
  std::string bytes_;
  std::unique_ptr<cairo_surface_t, Free> surface_;
  std::unique_ptr<cairo_t, Free> cairo_;
  std::unique_ptr<PangoLayout, Free> layout_;
  double down_ = 0.0;
  int number_ = 0;
};

std::string what_for(const std::vector<std::string>& uses) { return uses.empty() ? "" : "for " + joined(uses, ", "); }

/// What is open stands over everything else.
void verdict(Pages& pages, const Plan& plan, UnitSystem units) {
  pages.heading(fmt::format("Verdict: {}", key_of(plan.verdict)));
  for (const plan::Finding& finding : plan.findings)
    pages.sentence(fmt::format("{}: {}", title_of(finding.severity), sentences_of(finding, units)));
}

/// What goes with every plan, whatever is in it, at the end.
void standing(Pages& pages, const Plan& plan, UnitSystem units) {
  pages.heading("With every plan");
  for (const plan::Caution& caution : plan.cautions)
    if (caution.standing && (caution.where == plan::Topic::whole_job || caution.where == plan::Topic::list))
      pages.sentence(fmt::format("Caution: {} [{}]", say(caution.fact, units), caution.source));
}

void buy(Pages& pages, const plan::ShoppingList& list, UnitSystem units) {
  std::string shelf;
  for (const plan::ListItem& item : list.buy) {
    if (item.shelf != shelf || &item == list.buy.data()) pages.heading("Buy: " + item.shelf);
    shelf = item.shelf;
    std::string under = what_for(item.used_for);
    if (!item.instead.empty()) under += "\nor: " + joined(item.instead, "; or ");
    pages.row(quantity_of(item), item_name(item, units), price_of(item), under);
  }
  if (!list.buy.empty()) pages.sentence(sum_words(list));
}

void cut(Pages& pages, const plan::ShoppingList& list, UnitSystem units) {
  if (list.cut.empty()) return;
  pages.heading("Cut");
  for (const plan::CutItem& item : list.cut) {
    std::string under = "for " + item.used_for;
    if (const std::string remark = cut_remark(item, units); !remark.empty()) under += ", " + remark;
    pages.row(fmt::format("{}", item.quantity), "from " + item.stock, cut_size(item, units), under);
  }
}

}  // namespace

std::string list_pdf(const Plan& plan, const Style& style) {
  const plan::ShoppingList& list = plan.list;
  Pages pages(style.units == UnitSystem::inch ? kLetter : kA4,
              plan.job.name.empty() ? "Shopping list" : plan.job.name + ": shopping list");
  verdict(pages, plan, style.units);
  buy(pages, list, style.units);
  if (!list.consumables.empty()) pages.heading("Consumables and test gear");
  for (const plan::Consumable& item : list.consumables) pages.row("", item.name, item.quantity, item.why);
  if (!list.from_bin.empty()) pages.heading("Take from the bin");
  for (const plan::ListItem& item : list.from_bin)
    pages.row(quantity_of(item), item_name(item, style.units), "", what_for(item.used_for));
  cut(pages, list, style.units);
  for (const plan::Caution& caution : plan.cautions)
    if (!caution.standing && (caution.where == plan::Topic::whole_job || caution.where == plan::Topic::list))
      pages.sentence(fmt::format("Caution: {} [{}]", say(caution.fact, style.units), caution.source));
  standing(pages, plan, style.units);
  return pages.finish();
}

}  // namespace riserun::report
