#include "gui/views/reasons.h"

#include "gui/model/edit/mend.h"
#include "gui/views/pressure_bars.h"
#include "gui/views/scene/badge.h"
#include "gui/views/scene/words.h"
#include "report/words/remark_words.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr const char* kFixIt = "Fix";

Requests mend_buttons(const Scene& scene, const plan::Finding& finding, const std::string& name) {
  Requests asked;
  const UnitSystem units = scene.shown.units;
  const std::vector<plan::Changes> ways = gui::ways_to_follow(finding);
  for (std::size_t way = 0; way < ways.size(); ++way) {
    const plan::Changes& changes = ways[way];
    ImGui::PushID(static_cast<int>(way));
    const std::string title = gui::title_of_mend(*scene.shown.plan->catalog, changes, units);
    // A long one is said in full over a short button.
    const bool fits = ImGui::CalcTextSize(title.c_str()).x + 2.0F * ImGui::GetStyle().FramePadding.x <=
                      ImGui::GetContentRegionAvail().x;
    if (!fits) wrapped(title);
    ImGui::BeginDisabled(!scene.model.plan().current);
    if (button(fits ? title : kFixIt)) asked.push_back(gui::Perform{gui::FollowMend{changes, units}});
    ImGui::EndDisabled();
    note_item(scene, way == 0 ? "mend of " + name : fmt::format("mend {} of {}", way + 1, name));
    ImGui::PopID();
  }
  return asked;
}

/// Where a mend is made that no button makes.
std::string by_hand() {
  const auto sheet = [](Do what) { return fmt::format("{} ({})", row_of(what).name, keys_of(row_of(what))); };
  return fmt::format("No button writes this: change it under {}, or in the {}.", sheet(Do::sheet_measurements),
                     sheet(Do::sheet_file));
}

/// Label, value, and what must be read with it, in a row each; where it comes from under the pointer.
void figure_rows(const Scene& scene, const std::vector<Figure>& figures) {
  if (!ImGui::BeginTable("safety", 3, ImGuiTableFlags_SizingFixedFit)) return;
  for (const Figure& figure : figures) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextDisabled("%s", figure.label.c_str());
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(figure.value.c_str());
    if (ImGui::IsItemHovered()) hint(scene, figure.where_from);
    ImGui::TableNextColumn();
    ImGui::TextDisabled("%s", figure.beside.c_str());
  }
  ImGui::EndTable();
}

/// What keeps the plan from being of the job as it stands.
Requests entries_to_fix(const Scene& scene) {
  Requests asked;
  const gui::JobState& job = scene.model.job();
  for (const auto& [path, entry] : job.wrong_entries)
    wrapped(fmt::format("{} '{}': {}", path.text(), entry.written, entry.reason));
  for (const quantity::Problem& problem : job.problems) wrapped(problem.text());
  const Do where = job.problems.empty() ? Do::sheet_measurements : Do::sheet_file;
  if (button(row_of(where).name)) {
    asked.push_back(where);
    ImGui::CloseCurrentPopup();
  }
  return asked;
}

Requests reasons(const Scene& scene) {
  Requests asked;
  const plan::Plan& plan = *scene.shown.plan;
  const Badge badge = badge_of(scene.model, plan);
  if (badge.stale) {
    strong(scene, badge.words);
    return entries_to_fix(scene);
  }
  strong(scene, plan.findings.empty() ? badge.words + ": nothing is open" : "Why " + badge.words);
  if (can_mend_several(plan)) append(asked, draw_mend_all(scene));
  ImGui::SetItemDefaultFocus();
  for (std::size_t i = 0; i < plan.findings.size(); ++i)
    append(asked, draw_finding(scene, plan.findings[i], fmt::format("reason {}", i + 1)));
  ImGui::Separator();
  draw_pressure_bars(scene, ImGui::GetContentRegionAvail().x);
  if (!badge.watch.empty()) {
    wrapped(scene, Ink::caution, "Watch: the safety factor is below what a local rule may ask.");
    note_item(scene, "reason of watch");
  }
  figure_rows(scene, safety_figures(plan, scene.shown.units));
  return asked;
}

}  // namespace

Requests draw_finding(const Scene& scene, const plan::Finding& finding, const std::string& name) {
  const report::SaidFinding said = report::say(finding, scene.shown.units);
  ImGui::PushID(name.c_str());
  ImGui::Spacing();
  wrapped(scene, finding.severity == plan::Severity::refused ? Ink::refused : Ink::caution,
          report::fill("{0:sentence}", {said.reason}, scene.shown.units));
  note_item(scene, name);
  if (!finding.source.empty() && ImGui::IsItemHovered()) hint(scene, finding.source);
  if (!said.asked.empty()) wrapped(fmt::format("Asked {}, allowed {}.", said.asked, said.allowed));
  if (!said.mend.empty()) wrapped(words::kFix + said.mend);
  Requests asked = mend_buttons(scene, finding, name);
  if (!said.mend.empty() && gui::ways_to_follow(finding).empty()) {
    wrapped(scene, Ink::faint_text, by_hand());
    note_item(scene, "by hand " + name);
  }
  ImGui::PopID();
  return asked;
}

Requests draw_finding_line(const Scene& scene, const plan::Finding& finding, const std::string& name, int lines) {
  constexpr float kMostButton = 0.4F;  // of the line
  Requests asked;
  const UnitSystem units = scene.shown.units;
  const report::SaidFinding said = report::say(finding, units);
  std::string text =
      fmt::format("{}: {}", report::title_of(finding.severity), report::fill("{0:sentence}", {said.reason}, units));
  if (!said.mend.empty()) text += fmt::format(" {}{}", words::kFix, said.mend);
  const float all = ImGui::GetContentRegionAvail().x;
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const std::vector<plan::Changes> ways = gui::ways_to_follow(finding);
  const bool has_way = !ways.empty();
  std::string title = has_way ? gui::title_of_mend(*scene.shown.plan->catalog, ways.front(), units) : std::string();
  const auto button_width = [&] {
    return title.empty() ? 0.0F : ImGui::CalcTextSize(title.c_str()).x + 2.0F * ImGui::GetStyle().FramePadding.x;
  };
  const std::string whole_title = title;
  if (button_width() > all * kMostButton) title = kFixIt;
  const float wide = all - (has_way ? button_width() + gap : 0.0F);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const ImFont& font = *ImGui::GetFont();
  const std::string shown = fitting(font, text, wide, static_cast<float>(lines) * ImGui::GetTextLineHeight(), true);
  const float high = ImGui::CalcTextSize(shown.c_str(), nullptr, false, wide).y;
  const Ink ink = finding.severity == plan::Severity::refused ? Ink::refused : Ink::caution;
  const float opacity = ImGui::GetStyle().Alpha;
  ImGui::GetWindowDrawList()->AddText(&font, font.FontSize, at, packed(faded(scene.theme[ink], opacity)), shown.c_str(),
                                      nullptr, wide);
  note_text(scene, shown, {at.x, at.y, at.x + ImGui::CalcTextSize(shown.c_str(), nullptr, false, wide).x, at.y + high},
            {at.x, at.y, at.x + wide, at.y + high + 1.0F});
  ImGui::PushID(name.c_str());
  const bool low = lines == 1;
  const float button = !has_way ? 0.0F : low ? ImGui::GetTextLineHeight() : ImGui::GetFrameHeight();
  if (ImGui::InvisibleButton("all of it", {wide, std::max(high, button)})) asked.push_back(Do::why);
  note_item(scene, name);
  if (ImGui::IsItemHovered()) {
    const std::string source = finding.source.empty() ? "" : " [" + finding.source + "]";
    hint(scene, text + source + (has_way || said.mend.empty() ? "" : "\n" + by_hand()));
  }
  if (has_way) {
    ImGui::SameLine(0.0F, gap);
    ImGui::BeginDisabled(!scene.model.plan().current);
    if (low ? ImGui::SmallButton(title.c_str()) : ImGui::Button(title.c_str()))
      asked.push_back(gui::Perform{gui::FollowMend{ways.front(), units}});
    ImGui::EndDisabled();
    note_item(scene, "mend of " + name);
    if (title != whole_title && ImGui::IsItemHovered()) hint(scene, whole_title);
  }
  ImGui::PopID();
  return asked;
}

bool can_mend_several(const plan::Plan& plan) {
  return std::count_if(plan.findings.begin(), plan.findings.end(),
                       [](const plan::Finding& finding) { return !gui::ways_to_follow(finding).empty(); }) > 1;
}

Requests draw_mend_all(const Scene& scene) {
  Requests asked;
  ImGui::BeginDisabled(!scene.model.plan().current);
  if (button(row_of(Do::mend_all).name, true)) asked.push_back(Do::mend_all);
  ImGui::EndDisabled();
  note_item(scene, "mend all");
  if (ImGui::IsItemHovered()) hint(scene, "The first mend of each, one after the other; one step of undo");
  return asked;
}

Requests draw_reasons(const Scene& scene, ReasonsState& state) {
  constexpr float kWidth = 620.0F;  // points
  if (state.opens) ImGui::OpenPopup("reasons");
  state.opens = false;
  if (scene.shown.plan == nullptr) return {};
  const PixelBox room = {scene.px(8.0F), state.under.bottom + scene.px(4.0F),
                         ImGui::GetMainViewport()->Size.x - scene.px(8.0F),
                         ImGui::GetMainViewport()->Size.y - scene.px(8.0F)};
  const float wide = std::min(scene.px(kWidth), room.width());
  ImGui::SetNextWindowPos({std::max(room.left, std::min(state.under.left, room.right - wide)), room.top});
  ImGui::SetNextWindowSizeConstraints({wide, 0.0F}, {wide, std::max(scene.px(80.0F), room.height())});
  if (!ImGui::BeginPopup("reasons")) return {};
  Requests asked = reasons(scene);
  if (ImGui::IsWindowAppearing()) ImGui::SetScrollY(0.0F);  // not to the button that has the keyboard
  ImGui::Spacing();
  if (button(words::kClose) || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) ImGui::CloseCurrentPopup();
  note_item(scene, "close reasons");
  ImGui::EndPopup();
  return asked;
}

}  // namespace riserun::views
