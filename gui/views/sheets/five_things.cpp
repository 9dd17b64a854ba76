#include "gui/views/sheets/five_things.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/words.h"
#include "gui/views/sheets/elevation_pane.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr float kLabelWide = 118.0F;  // points
constexpr float kEntryWide = 118.0F;
constexpr float kList = 450.0F;
constexpr float kLeastBoth = 1010.0F;  // points across for list and elevation side by side
constexpr float kElevation = 400.0F;   // points high

/// The field stands beside it: its key need not be named again.
std::string without_key(const std::string& reason, const gui::JobPath& at) {
  const std::string key = at.text() + ": ";
  return reason.starts_with(key) ? reason.substr(key.size()) : reason;
}

/// One sentence beside the field: its help or, in its place, what is wrong, within the row's height.
void note_beside(const Scene& scene, const gui::Measure& measure, float row_top) {
  const auto wrong = scene.model.job().wrong_entries.find(measure.at);
  const bool is_wrong = wrong != scene.model.job().wrong_entries.end();
  const std::string text = is_wrong ? without_key(wrong->second.reason, measure.at) : std::string(measure.help);
  const ImVec2 at{ImGui::GetCursorScreenPos().x, row_top};
  const float wide = ImGui::GetContentRegionAvail().x;
  const float high = ImGui::GetFrameHeight() + scene.px(2.0F);
  const ImFont& font = *scene.fonts.small;
  const ImVec2 size = font.CalcTextSizeA(font.FontSize, FLT_MAX, wide, text.c_str());
  const ImVec4 clip{at.x, at.y, at.x + wide, at.y + high};
  ImGui::GetWindowDrawList()->AddText(
      scene.fonts.small, font.FontSize, {at.x, at.y + std::max(0.0F, (high - size.y) / 2.0F)},
      packed(scene.theme[is_wrong ? Ink::refused : Ink::faint_text]), text.c_str(), nullptr, wide, &clip);
  ImGui::SetCursorScreenPos(at);
  ImGui::Dummy({wide, ImGui::GetFrameHeight()});
  note_item(scene, (is_wrong ? "wrong " : "help ") + measure.at.text());
  if (size.y > high && ImGui::IsItemHovered()) hint(scene, text);
}

Requests thing(const Scene& scene, MeasurementsState& state, const gui::Thing& thing, std::size_t number) {
  Requests asked;
  strong(scene, fmt::format("{}  {}", number, thing.title));
  for (const gui::Measure& measure : thing.measures) {
    ImGui::PushID(measure.at.text().c_str());
    const float top = ImGui::GetCursorScreenPos().y;
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(measure.label.data());
    ImGui::SameLine(left + scene.px(kLabelWide));
    ImGui::SetNextItemWidth(scene.px(kEntryWide));
    append(asked, type_entry(scene, state.fields[measure.at], measure.at, measure.kind, words::kNotSet));
    note_item(scene, "field " + measure.at.text());
    ImGui::SameLine(0.0F, scene.px(8.0F));
    note_beside(scene, measure, top);
    ImGui::PopID();
  }
  return asked;
}

void what_is_missing(const Scene& scene) {
  const std::vector<std::string> missing = gui::still_to_give(scene.model.job());
  if (missing.empty()) return;
  ImGui::Spacing();
  wrapped(scene, Ink::accent, fmt::format("Still to give: {}", fmt::join(missing, ", ")));
  note_item(scene, "still to give");
}

}  // namespace

Requests draw_five_things(const Scene& scene, MeasurementsState& state) {
  Requests asked;
  const float all = ImGui::GetContentRegionAvail().x;
  const bool beside = all > scene.px(kLeastBoth);
  ImGui::BeginGroup();
  ImGui::PushID("five things");
  if (ImGui::BeginTable("asked", 1, 0, {beside ? scene.px(kList) : all, 0.0F})) {
    ImGui::TableNextColumn();
    std::size_t number = 0;
    for (const gui::Thing& each : gui::five_things()) append(asked, thing(scene, state, each, ++number));
    what_is_missing(scene);
    ImGui::EndTable();
  }
  ImGui::PopID();
  ImGui::EndGroup();
  if (beside) ImGui::SameLine(0.0F, scene.px(14.0F));
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  const float high = beside ? std::max(ImGui::GetItemRectSize().y, scene.px(kElevation)) : scene.px(kElevation);
  append(asked, draw_elevation(scene, state, {at.x, at.y, at.x + wide, at.y + high}));
  return asked;
}

}  // namespace riserun::views
