#include "gui/views/sheets/water_sheet.h"

#include "report/drawing/plot_drawing.h"
#include "report/drawing/section_drawing.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace riserun::views {

namespace {

using report::in_a_row;
using report::Mark;
using report::Phase;
using report::PlotPoint;
using report::PlotSeries;
using report::round_step;

/// The box without what the dimensions need at its sides.
PixelBox between_margins(const Drawing& drawing, const PixelBox& box, float pixel) {
  const float pad = 10.0F * pixel;
  return {box.left + pad + margin_for(drawing, Side::left, pixel), box.top + pad,
          box.right - pad - margin_for(drawing, Side::right, pixel), box.bottom - pad};
}

/// One plot with its axis, its band and its curves.
class PlotPainter {
 public:
  PlotPainter(const Scene& scene, const Plot& plot, const PixelBox& box, double whole)
      : scene_(scene), plot_(plot), box_(box), whole_(std::max(whole, 1e-9)), list_(*ImGui::GetWindowDrawList()) {
    const float margin = scene.px(64.0F);
    area_ = {box.left + margin, box.top + scene.px(26.0F), box.right - scene.px(12.0F), box.bottom - scene.px(24.0F)};
    least_ = plot.least;
    most_ = plot.most > plot.least ? plot.most : plot.least + 1.0;
  }

  void draw(double fill_shown, double now) {
    list_.AddRectFilled({box_.left, box_.top}, {box_.right, box_.bottom}, ink(Ink::panel));
    ImGui::PushFont(scene_.fonts.strong);
    text({box_.left + scene_.px(10.0F), box_.top + scene_.px(4.0F)}, Ink::text, plot_.title + ", " + plot_.unit);
    ImGui::PopFont();
    ImGui::PushFont(scene_.fonts.small);
    axes(fill_shown);
    for (const report::PlotLevel& level : plot_.levels) against(level);
    for (std::size_t i = 0; i < plot_.series.size(); ++i) curve(plot_.series[i], report::ink_of(plot_, i));
    names();
    list_.AddLine({x(now), area_.top}, {x(now), area_.bottom}, ink(Ink::accent), scene_.px(1.5F));
    ImGui::PopFont();
  }

  /// The time under the pointer, if it is over the curves.
  std::optional<double> time_under(const ImVec2& pointer) const {
    if (pointer.x < area_.left || pointer.x > area_.right || pointer.y < area_.top || pointer.y > area_.bottom)
      return {};
    return static_cast<double>((pointer.x - area_.left) / area_.width()) * whole_;
  }

  void read_out(double time) const {
    list_.AddLine({x(time), area_.top}, {x(time), area_.bottom}, ink(Ink::text), scene_.px(1.0F));
    std::string words = write_time(seconds(time));
    for (const PlotSeries& series : plot_.series) {
      const auto after = std::lower_bound(series.points.begin(), series.points.end(), time,
                                          [](const PlotPoint& point, double at) { return point.time < at; });
      if (after == series.points.end()) continue;
      words += fmt::format("\n{}: {} {}", series.name, write_number(after->value), plot_.unit);
      if (after->high > after->low)
        words += fmt::format(" ({})", write_range(write_number(after->low), write_number(after->high)));
    }
    hint(scene_, words);
  }

 private:
  ImU32 ink(Ink which) const { return packed(scene_.theme[which]); }
  float x(double time) const { return area_.left + static_cast<float>(time / whole_) * area_.width(); }
  float y(double value) const {
    return area_.bottom - static_cast<float>((value - least_) / (most_ - least_)) * area_.height();
  }
  void text(ImVec2 at, Ink which, const std::string& words) const {
    list_.AddText({std::floor(at.x), std::floor(at.y)}, ink(which), words.c_str());
  }

  void axes(double fill_shown) const {
    const ImU32 line = ink(Ink::line);
    const float line_height = ImGui::GetTextLineHeight();
    const int rows = std::max(1, static_cast<int>(area_.height() / (2.2F * line_height)));
    const double step = round_step(most_ - least_, rows);
    for (double value = std::ceil(least_ / step) * step; value <= most_ + 1e-9 * step; value += step) {
      list_.AddLine({area_.left, y(value)}, {area_.right, y(value)}, line, scene_.scale);
      const std::string words = write_number(std::abs(value) < 1e-9 * step ? 0.0 : value);
      text({area_.left - ImGui::CalcTextSize(words.c_str()).x - scene_.px(6.0F), y(value) - line_height / 2.0F},
           Ink::faint_text, words);
    }
    const int columns = std::max(1, static_cast<int>(area_.width() / (5.0F * line_height)));
    const double step_of_time = report::time_step(whole_, columns);
    for (double time = 0.0; time <= whole_; time += step_of_time) {
      list_.AddLine({x(time), area_.bottom}, {x(time), area_.bottom + scene_.px(4.0F)}, line, scene_.scale);
      const std::string words = write_time(seconds(time));
      const float half = ImGui::CalcTextSize(words.c_str()).x / 2.0F;
      if (x(time) + half < box_.right) text({x(time) - half, area_.bottom + scene_.px(5.0F)}, Ink::faint_text, words);
    }
    list_.AddLine({x(fill_shown), area_.top}, {x(fill_shown), area_.bottom}, ink(Ink::faint_text), scene_.scale);
  }

  /// A level with its words at its right end: of what must not be reached under the line, which is the plot's top.
  void against(const report::PlotLevel& level) const {
    const Ink which = level.warning ? Ink::refused : Ink::text;
    list_.AddLine({area_.left, y(level.value)}, {area_.right, y(level.value)}, ink(which), scene_.scale);
    const float line = ImGui::GetTextLineHeight();
    text({area_.right - ImGui::CalcTextSize(level.name.c_str()).x, y(level.value) - (level.warning ? 0.0F : line)},
         which, level.name);
  }

  void curve(const PlotSeries& series, Ink which) const {
    const ImU32 band = packed(faded(scene_.theme[which], 0.30F));
    std::vector<ImVec2> way;
    way.reserve(series.points.size());
    // Softened edges between the strips of a band would show as lines.
    const ImDrawListFlags flags = list_.Flags;
    list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
    for (std::size_t i = 0; i < series.points.size(); ++i) {
      const PlotPoint& b = series.points[i];
      way.push_back({x(b.time), y(b.value)});
      if (i == 0) continue;
      const PlotPoint& a = series.points[i - 1];
      list_.AddQuadFilled({x(a.time), y(a.low)}, {x(b.time), y(b.low)}, {x(b.time), y(b.high)}, {x(a.time), y(a.high)},
                          band);
    }
    list_.Flags = flags;
    list_.AddPolyline(way.data(), static_cast<int>(way.size()), line_ink(which), ImDrawFlags_None, scene_.px(2.0F));
  }
  /// On a dark ground the fluids' own colours are too dim for a thin line.
  ImU32 line_ink(Ink which) const {
    if (scene_.theme.looks == gui::Looks::light || which == Ink::accent) return ink(which);
    Color c = scene_.theme[which];
    c.red += (1.0F - c.red) * 0.5F;
    c.green += (1.0F - c.green) * 0.5F;
    c.blue += (1.0F - c.blue) * 0.5F;
    return packed(c);
  }

  /// Which curve is which, at the right of the title.
  void names() const {
    float right = area_.right;
    for (std::size_t i = plot_.series.size(); i-- > 0;) {
      right -= ImGui::CalcTextSize(plot_.series[i].name.c_str()).x;
      text({right, box_.top + scene_.px(7.0F)}, Ink::text, plot_.series[i].name);
      right -= scene_.px(24.0F);
      const float level = box_.top + scene_.px(7.0F) + ImGui::GetTextLineHeight() / 2.0F;
      list_.AddLine({right, level}, {right + scene_.px(18.0F), level}, line_ink(report::ink_of(plot_, i)),
                    scene_.px(3.0F));
      right -= scene_.px(14.0F);
    }
  }

  const Scene& scene_;
  const Plot& plot_;
  PixelBox box_, area_;
  double whole_, least_ = 0.0, most_ = 1.0;
  ImDrawList& list_;
};

Requests draw_plots(const Scene& scene, const PixelBox& box) {
  Requests asked;
  const float gap = scene.px(8.0F);
  const std::size_t count = scene.shown.plots.size();
  const float high = (box.height() - gap * static_cast<float>(count - 1)) / static_cast<float>(count);
  const double whole = in_seconds(scene.shown.timeline.whole());
  for (std::size_t i = 0; i < count; ++i) {
    const float top = box.top + static_cast<float>(i) * (high + gap);
    const PixelBox place{box.left, top, box.right, top + high};
    ImGui::PushID(static_cast<int>(i));
    ImGui::SetCursorScreenPos({place.left, place.top});
    ImGui::InvisibleButton("plot", {place.width(), place.height()});
    PlotPainter painter(scene, scene.shown.plots[i], place, whole);
    painter.draw(in_seconds(scene.shown.timeline.fill_shown), in_seconds(scene.playback.now));
    if (const auto time = painter.time_under(ImGui::GetMousePos());
        time && (ImGui::IsItemHovered() || ImGui::IsItemActive())) {
      painter.read_out(*time);
      if (ImGui::IsItemActive()) asked.push_back(Seek{seconds(*time)});
    }
    ImGui::PopID();
  }
  return asked;
}

/// As large as its margins leave room for; nothing where that is hardly any.
void draw_in(const Scene& scene, const PixelBox& box, const Drawing& drawing) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, packed(scene.theme[Ink::panel]));
  list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  const PixelBox room = between_margins(drawing, box, scene.scale);
  const float edge = scene.px(4.0F);
  if (room.width() > scene.px(40.0F))
    paint(drawing, fitted(drawing, room, scene.scale),
          {box.left + edge, box.top + edge, box.right - edge, box.bottom - edge}, scene.theme, list);
  list.PopClipRect();
}

}  // namespace

void draw_section(const Scene& scene, const PixelBox& box) {
  ImGui::PushFont(box.width() > scene.px(620.0F) ? scene.fonts.body : scene.fonts.small);
  draw_in(scene, box,
          report::section_drawing(*scene.shown.plan, instant_shown(scene), scene.shown.units, &scene.shown.devices));
  ImGui::PopFont();
}

Requests draw_clock(const Scene& scene) {
  Requests asked;
  const double whole = in_seconds(scene.shown.timeline.whole());
  if (ImGui::Button(scene.playback.playing ? "Pause" : "Play", {scene.px(70.0F), 0.0F})) asked.push_back(Do::play);
  note_item(scene, "play");
  for (std::size_t row = 0; row < std::size(kSpeeds); ++row) {
    ImGui::SameLine(0.0F, scene.px(4.0F));
    const std::string words = fmt::format("\xC3\x97{:.0f}", kSpeeds[row]);
    if (one_of(scene, words.c_str(), scene.playback.speed == kSpeeds[row]))
      asked.push_back(static_cast<Do>(static_cast<int>(Do::speed_1) + static_cast<int>(row)));
    note_item(scene, "speed " + words);
  }
  ImGui::SameLine();
  float now = static_cast<float>(in_seconds(scene.playback.now));
  const Phase phase = phase_at(scene.shown.timeline, scene.playback.now);
  const Time since = phase == Phase::fill ? scene.playback.now : scene.playback.now - scene.shown.timeline.fill_shown;
  const std::string words = fmt::format("{} {}", phase == Phase::fill ? "filling" : "draining", write_time(since));
  ImGui::SetNextItemWidth(std::max(scene.px(80.0F), ImGui::GetContentRegionAvail().x));
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float wide = ImGui::CalcItemWidth();
  if (ImGui::SliderFloat("##time", &now, 0.0F, static_cast<float>(whole), words.c_str()))
    asked.push_back(Seek{seconds(now)});
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float grab = ImGui::GetStyle().GrabMinSize;
  ImGui::PushFont(scene.fonts.small);
  const float under = corner.y + ImGui::GetFrameHeight() + scene.px(10.0F);
  const std::vector<Mark>& marks = scene.shown.timeline.marks;
  std::vector<double> middles;
  std::vector<double> widths;
  for (const Mark& mark : marks) {
    const float share = whole > 0.0 ? static_cast<float>(in_seconds(mark.at) / whole) : 0.0F;
    middles.push_back(corner.x + grab / 2.0F + share * (wide - grab));
    widths.push_back(ImGui::CalcTextSize(mark.text.c_str()).x);
  }
  const std::vector<double> begins = in_a_row(middles, widths, scene.px(10.0F), corner.x, corner.x + wide);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const ImU32 ink = packed(scene.theme[marks[i].warning ? Ink::refused : Ink::text]);
    const float x = static_cast<float>(middles[i]);
    const float size = scene.px(5.0F);
    list.AddTriangleFilled({x, under - scene.px(7.0F)}, {x + size, under}, {x - size, under}, ink);
    list.AddText({std::floor(static_cast<float>(begins[i])), under + scene.px(1.0F)}, ink, marks[i].text.c_str());
  }
  ImGui::Dummy({1.0F, ImGui::GetTextLineHeight() + scene.px(6.0F)});
  ImGui::PopFont();
  return asked;
}

/// The section alone, under the reason why there is nothing to play and no curve.
void draw_at_rest(const Scene& scene) {
  const std::string& missing = scene.shown.plan->transfer.missing_run;
  wrapped(scene, Ink::refused,
          missing.empty() ? "Nothing flows: the water does not begin to rise."
                          : fmt::format("Nothing flows: '{}' has no run.", missing));
  note_item(scene, "nothing flows");
  draw_section(scene, room_left());
}

Requests draw_water(const Scene& scene) {
  if (scene.shown.timeline.whole() <= Time{}) {
    draw_at_rest(scene);
    return {};
  }
  const PixelBox all = room_left();
  const float clock = ImGui::GetFrameHeight() + scene.px(34.0F);
  const bool wide = all.width() > scene.px(900.0F);
  const float gap = scene.px(10.0F);
  const float split = wide ? all.left + all.width() * 0.56F : all.right;
  const float section_bottom =
      wide ? all.bottom - clock - gap : all.top + std::max(scene.px(100.0F), all.height() - clock - gap);
  PixelBox section{all.left, all.top, split, section_bottom};
  if (wide && all.height() > scene.px(520.0F)) {
    const float close_up = scene.px(150.0F);
    draw_in(scene, {section.left, section.bottom - close_up, section.right, section.bottom},
            report::riser_end_drawing(*scene.shown.plan, instant_shown(scene), scene.shown.units));
    section.bottom -= close_up + gap;
  }
  draw_section(scene, section);
  ImGui::SetCursorScreenPos({all.left, section_bottom + gap});
  ImGui::BeginChild("clock", {split - all.left, clock}, false, ImGuiWindowFlags_NoScrollbar);
  Requests asked = draw_clock(scene);
  ImGui::EndChild();
  if (wide) {
    append(asked, draw_plots(scene, {split + gap, all.top, all.right, all.bottom}));
  } else {
    const float top = section_bottom + gap + clock;
    append(asked, draw_plots(scene, {all.left, top, all.right, std::max(all.bottom, top + scene.px(420.0F))}));
  }
  return asked;
}

}  // namespace riserun::views
