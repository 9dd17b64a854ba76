// The verdict, the few numbers that are read from six feet, the pressures against the walls' limit, and what is open.
#include "gui/model/session/first_measures.h"
#include "gui/views/desk.h"
#include "gui/views/pressure_bars.h"
#include "gui/views/scene/badge.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

/// How high the strip is that is read from six feet, and in which letters: lower where the screen is low.
struct Strip {
  float height;  // points
  float value;   // points down to the number
  float beside;
  ImFont* font;
  float gap;
  std::size_t findings;  // that stand under it
  int lines;             // of each
  bool bars;
};
Strip strip_of(const Scene& scene) {
  constexpr float kLow = 560.0F;    // points
  constexpr float kRoomy = 900.0F;  // below it a third leaves the plumbing too little
  const float high = ImGui::GetMainViewport()->WorkSize.y;
  if (high >= scene.px(kLow))
    return {58.0F, 12.0F, 44.0F, scene.fonts.large, 22.0F, high >= scene.px(kRoomy) ? std::size_t{3} : 2, 2, true};
  return {47.0F, 14.0F, 33.0F, scene.fonts.strong, 14.0F, 1, 2, false};
}

/// The verdict and, beside it, what must be watched, as one button.
bool badge_button(const Scene& scene, const Badge& badge, const std::string& says, PixelBox& place) {
  ImGui::PushFont(scene.fonts.strong);
  const float pad = scene.px(12.0F);
  const float high = scene.px(strip_of(scene).height);
  const ImVec2 size = ImGui::CalcTextSize(badge.words.c_str());
  const float wide = size.x + 2.0F * pad;
  const float watch = badge.watch.empty() ? 0.0F : ImGui::CalcTextSize(badge.watch.c_str()).x + 2.0F * pad;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const bool clicked = ImGui::InvisibleButton("verdict", {wide + watch, high});
  const bool marked = ImGui::IsItemHovered() || ImGui::IsItemFocused();
  note_item(scene, "verdict " + badge.words);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float text_top = at.y + (high - size.y) / 2.0F;
  const auto block = [&](float left, float right, Ink ground, const std::string& text) {
    list.AddRectFilled({left, at.y}, {right, at.y + high}, packed(scene.theme[ground]));
    list.AddText({left + pad, text_top}, packed(scene.theme[Ink::status_text]), text.c_str());
  };
  block(at.x, at.x + wide, badge.ground, badge.words);
  if (watch > 0.0F) {
    const float line = scene.px(2.0F);
    block(at.x + wide + line, at.x + wide + watch, Ink::caution_ground, badge.watch);
    note_place(scene, badge.watch, {at.x + wide, at.y, at.x + wide + watch, at.y + high});
  }
  ImGui::PopFont();
  place = {at.x, at.y, at.x + wide + watch, at.y + high};
  if (marked) list.AddRect(at, {place.right, place.bottom}, packed(scene.theme[Ink::text]), 0.0F, 0, scene.px(2.0F));
  if (ImGui::IsItemHovered()) hint(scene, says);
  return clicked;
}

/// Name, number and what must be read with it, one over the other.
void headline_figure(const Scene& scene, const Figure& figure) {
  const std::vector<Change>& changes = scene.shown.changes;
  const auto change =
      std::find_if(changes.begin(), changes.end(), [&](const Change& one) { return one.label == figure.label; });
  const bool changed = change != changes.end() && scene.shown.plan != nullptr;
  const std::string label = changed ? figure.label + ", was " + change->before : figure.label;
  const Strip strip = strip_of(scene);
  const auto widest = [&](ImFont* font, const std::string& text) {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, text.c_str()).x;
  };
  const float wide = std::max({scene.px(64.0F), widest(scene.fonts.small, label), widest(strip.font, figure.value),
                               widest(scene.fonts.small, figure.beside)});
  const float gap = scene.px(strip.gap);
  const float right = ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x;
  ImGui::SameLine(0.0F, gap);
  if (ImGui::GetCursorScreenPos().x + wide > right) ImGui::NewLine();
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool current = scene.model.plan().current;
  const auto put = [&](ImFont* font, float down, Ink ink, const std::string& text) {
    list.AddText(font, font->FontSize, {at.x, at.y + scene.px(down)},
                 packed(scene.theme[current ? ink : Ink::stale_text]), text.c_str());
    const ImVec2 low{at.x, at.y + scene.px(down)};
    note_text(scene, text, {low.x, low.y, low.x + widest(font, text), low.y + font->FontSize},
              {at.x, at.y, right, at.y + scene.px(strip.height) + 1.0F});
  };
  put(scene.fonts.small, 0.0F, changed ? Ink::accent : Ink::faint_text, label);
  put(strip.font, strip.value, Ink::text, figure.value);
  put(scene.fonts.small, strip.beside, Ink::faint_text, figure.beside);
  ImGui::Dummy({wide, scene.px(strip.height)});
  note_item(scene, "figure " + figure.label);
  if (ImGui::IsItemHovered()) hint(scene, figure.where_from);
}

/// Where the figures stand once they can be worked out, and how much is still to be given for that.
Requests blank_strip(const Scene& scene, std::size_t missing) {
  Requests asked;
  Badge badge;
  badge.words = missing == 1 ? "1 measure to give" : fmt::format("{} measures to give", missing);
  PixelBox place;
  if (badge_button(scene, badge, "To the measurements", place)) asked.push_back(Do::sheet_measurements);
  for (const char* label : {"set", "fill", "drain", "cut riser", "buy"}) {
    headline_figure(scene, {label, "", "", "Worked out once all measures are given."});
    note_item(scene, fmt::format("result {} blank", label));
  }
  return asked;
}

constexpr float kMostBarsWide = 470.0F;  // points

float right_edge() { return ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x; }

/// Beside the figures, where there is room for them. True: they stand there.
bool bars_beside(const Scene& scene) {
  ImGui::SameLine(0.0F, scene.px(30.0F));
  const float room = right_edge() - ImGui::GetCursorScreenPos().x;
  if (room < scene.px(kLeastBarsWide)) {
    ImGui::NewLine();
    return false;
  }
  draw_pressure_bars(scene, std::min(room, scene.px(kMostBarsWide)));
  return true;
}

/// The first of what is open, each with what fixes it, and how many more there are.
Requests first_findings(const Scene& scene, const plan::Plan& plan) {
  Requests asked;
  const Strip strip = strip_of(scene);
  const std::size_t shown = std::min(strip.findings, plan.findings.size());
  for (std::size_t i = 0; i < shown; ++i)
    append(asked, draw_finding_line(scene, plan.findings[i], fmt::format("open {}", i + 1), strip.lines));
  const bool several = can_mend_several(plan);
  if (several) append(asked, draw_mend_all(scene));
  if (shown == plan.findings.size()) return asked;
  if (several) ImGui::SameLine();
  const std::string more = fmt::format("{} more ({})", plan.findings.size() - shown, keys_of(row_of(Do::why)));
  if (ImGui::SmallButton(more.c_str())) asked.push_back(Do::why);
  note_item(scene, "more findings");
  return asked;
}

}  // namespace

Requests draw_strip(const Scene& scene, ReasonsState& reasons) {
  const plan::Plan* plan = scene.shown.plan.get();
  if (plan == nullptr) {
    if (gui::only_lacks_measures(scene.model.job()))
      return blank_strip(scene, gui::still_to_give(scene.model.job()).size());
    ImGui::TextDisabled("%s", scene.model.plan().working ? "Working the plan out ..." : "No plan yet.");
    return {};
  }
  Requests asked;
  const std::string why = "Why (" + keys_of(row_of(Do::why)) + ")";
  if (badge_button(scene, badge_of(scene.model, *plan), why, reasons.under)) asked.push_back(Do::why);
  for (const Figure& figure : scene.shown.headline) headline_figure(scene, figure);
  const bool stale = begin_stale(scene);
  const bool under = strip_of(scene).bars && !bars_beside(scene);
  const float wide = under ? ImGui::GetContentRegionAvail().x - scene.px(kMostBarsWide + 20.0F) : 0.0F;
  // A table of one column keeps to its width and grows with what is in it.
  if ((under || !plan->findings.empty()) && ImGui::BeginTable("open", 1, 0, {wide, 0.0F})) {
    ImGui::TableNextColumn();
    append(asked, first_findings(scene, *plan));
    ImGui::EndTable();
  }
  if (under) {
    ImGui::SameLine(0.0F, scene.px(20.0F));
    draw_pressure_bars(scene, scene.px(kMostBarsWide));
  }
  end_stale(stale);
  return asked;
}

}  // namespace riserun::views
