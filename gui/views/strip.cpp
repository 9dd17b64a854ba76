// The verdict and the few numbers that are read from six feet.
#include "gui/views/desk.h"
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

/// The verdict, or what stands in its place where the plan is not of the job as it is.
std::string verdict_words(const Scene& scene, const plan::Plan& plan) {
  const gui::JobState& job = scene.model.job();
  const std::size_t wrong = job.problems.size() + job.wrong_entries.size();
  if (wrong == 0 || scene.model.plan().current) return verdict_of(plan.verdict);
  return fmt::format("not up to date: {} to fix", wrong == 1 ? "1 entry" : fmt::format("{} entries", wrong));
}

void verdict(const Scene& scene, const plan::Plan& plan) {
  const bool current = scene.model.plan().current;
  const Ink ground = !current                                 ? Ink::stale_ground
                     : plan.verdict == plan::Verdict::ready   ? Ink::good_ground
                     : plan.verdict == plan::Verdict::not_yet ? Ink::caution_ground
                                                              : Ink::refused_ground;
  const std::string words = verdict_words(scene, plan);
  ImGui::PushFont(scene.fonts.strong);
  const ImVec2 size = ImGui::CalcTextSize(words.c_str());
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float pad = scene.px(12.0F);
  const float high = scene.px(strip_of(scene).height);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled(at, {at.x + size.x + 2.0F * pad, at.y + high}, packed(scene.theme[ground]), scene.px(2.0F));
  list.AddText({at.x + pad, at.y + (high - size.y) / 2.0F}, packed(scene.theme[Ink::status_text]), words.c_str());
  ImGui::PopFont();
  ImGui::Dummy({size.x + 2.0F * pad, high});
  note_item(scene, "verdict " + words);
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

void draw_strip(const Scene& scene) {
  const plan::Plan* plan = scene.shown.plan.get();
  if (plan == nullptr) {
    ImGui::TextDisabled(scene.model.plan().working ? "Working the plan out ..." : "No plan yet.");
    return;
  }
  verdict(scene, *plan);
  for (const Figure& figure : scene.shown.headline) headline_figure(scene, figure);
  for (const plan::Finding& finding : plan->findings)
    wrapped(
        scene, finding.severity == plan::Severity::refused ? Ink::refused : Ink::caution,
        fmt::format("{}: {}", report::title_of(finding.severity), report::sentences_of(finding, scene.shown.units)));
}

}  // namespace riserun::views
