// The verdict and the few numbers that are read from six feet.
#include "gui/views/desk.h"
#include "gui/views/scene/badge.h"
#include "report/words/remark_words.h"

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
};
Strip strip_of(const Scene& scene) {
  constexpr float kLow = 560.0F;  // points
  if (ImGui::GetMainViewport()->WorkSize.y >= scene.px(kLow)) return {58.0F, 12.0F, 44.0F, scene.fonts.large, 22.0F};
  return {47.0F, 14.0F, 33.0F, scene.fonts.strong, 14.0F};
}

/// The verdict and, beside it, what must be watched: a click leads to the reasons.
Requests verdict(const Scene& scene, const plan::Plan& plan, ReasonsState& reasons) {
  const Badge badge = badge_of(scene.model, plan);
  ImGui::PushFont(scene.fonts.strong);
  const float pad = scene.px(12.0F);
  const float high = scene.px(strip_of(scene).height);
  const ImVec2 size = ImGui::CalcTextSize(badge.words.c_str());
  const float wide = size.x + 2.0F * pad;
  const float watch = badge.watch.empty() ? 0.0F : ImGui::CalcTextSize(badge.watch.c_str()).x + 2.0F * pad;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  Requests asked;
  if (ImGui::InvisibleButton("verdict", {wide + watch, high})) asked.push_back(Do::why);
  const bool marked = ImGui::IsItemHovered() || ImGui::IsItemFocused();
  note_item(scene, "verdict " + badge.words);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float text_top = at.y + (high - size.y) / 2.0F;
  const auto block = [&](float left, float right, Ink ground, const std::string& words) {
    list.AddRectFilled({left, at.y}, {right, at.y + high}, packed(scene.theme[ground]));
    list.AddText({left + pad, text_top}, packed(scene.theme[Ink::status_text]), words.c_str());
  };
  block(at.x, at.x + wide, badge.ground, badge.words);
  if (watch > 0.0F) {
    const float line = scene.px(2.0F);
    block(at.x + wide + line, at.x + wide + watch, Ink::caution_ground, badge.watch);
    note_place(scene, badge.watch, {at.x + wide, at.y, at.x + wide + watch, at.y + high});
  }
  ImGui::PopFont();
  if (marked)
    list.AddRect(at, {at.x + wide + watch, at.y + high}, packed(scene.theme[Ink::text]), 0.0F, 0, scene.px(2.0F));
  if (ImGui::IsItemHovered()) hint(scene, "Why (" + keys_of(row_of(Do::why)) + ")");
  reasons.under = {at.x, at.y, at.x + wide + watch, at.y + high};
  return asked;
}

/// Name, number and what must be read with it, one over the other.
void headline_figure(const Scene& scene, const Figure& figure) {
  const Strip strip = strip_of(scene);
  const auto widest = [&](ImFont* font, const std::string& text) {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, text.c_str()).x;
  };
  const float wide = std::max({widest(scene.fonts.small, figure.label), widest(strip.font, figure.value),
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
  };
  put(scene.fonts.small, 0.0F, Ink::faint_text, figure.label);
  put(strip.font, strip.value, Ink::text, figure.value);
  put(scene.fonts.small, strip.beside, Ink::faint_text, figure.beside);
  ImGui::Dummy({wide, scene.px(strip.height)});
  note_item(scene, "figure " + figure.label);
  if (ImGui::IsItemHovered()) hint(scene, figure.where_from);
}

}  // namespace

Requests draw_strip(const Scene& scene, ReasonsState& reasons) {
  const plan::Plan* plan = scene.shown.plan.get();
  if (plan == nullptr) {
    ImGui::TextDisabled(scene.model.plan().working ? "Working the plan out ..." : "No plan yet.");
    return {};
  }
  Requests asked = verdict(scene, *plan, reasons);
  for (const Figure& figure : scene.shown.headline) headline_figure(scene, figure);
  for (const plan::Finding& finding : plan->findings)
    wrapped(
        scene, finding.severity == plan::Severity::refused ? Ink::refused : Ink::caution,
        fmt::format("{}: {}", report::title_of(finding.severity), report::sentences_of(finding, scene.shown.units)));
  return asked;
}

}  // namespace riserun::views
