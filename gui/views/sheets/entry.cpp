#include "gui/views/sheets/entry.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/command.h"
#include "gui/views/scene/words.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace riserun::views {

std::string written_value(const gui::JobState& job, const gui::JobPath& at) {
  const auto found = job.values.find(at);
  return found == job.values.end() ? std::string() : found->second.text;
}

std::optional<UnitSystem> own_units(const gui::JobState& job) {
  const std::string named = written_value(job, gui::at("units"));
  if (named == "inch") return UnitSystem::inch;
  return named == "metric" ? std::optional(UnitSystem::metric) : std::nullopt;
}

std::string in_box(const Scene& scene, const std::string& words, float besides) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const ImVec2 pad = ImGui::GetStyle().FramePadding;
  const float room = ImGui::CalcItemWidth() - 2.0F * pad.x - besides;
  const float high = ImGui::GetTextLineHeight();
  const std::string shown = fitting(*ImGui::GetFont(), words, room, high, false);
  const float wide = ImGui::CalcTextSize(shown.c_str()).x;
  note_text(scene, shown, {at.x + pad.x, at.y + pad.y, at.x + pad.x + wide, at.y + pad.y + high},
            {at.x + pad.x, at.y + pad.y, at.x + pad.x + room, at.y + pad.y + high});
  return shown;
}

float box_for(const Scene& scene, const std::string& words, float least, float besides) {
  constexpr float kSpare = 2.0F;  // points
  const float wide = ImGui::CalcTextSize(words.c_str()).x + 2.0F * ImGui::GetStyle().FramePadding.x + besides;
  return std::min(ImGui::GetContentRegionAvail().x, std::max(least, wide + scene.px(kSpare)));
}

Requests type_entry(const Scene& scene, FieldText& entry, const gui::JobPath& at, gui::FieldKind kind,
                    const std::string& in_its_place) {
  const gui::JobState& job = scene.model.job();
  const UnitSystem units = scene.model.units();
  const bool is_refused = job.wrong_entries.contains(at);
  const bool is_wrong = gui::wrong_at(job, at).has_value();
  const std::string shown = gui::shown_in(kind, written_value(job, at), units, own_units(job));
  if (!entry.held) entry.text = is_refused ? job.wrong_entries.at(at).written : shown;
  if (is_wrong) {
    ImGui::PushStyleColor(ImGuiCol_Border, packed(scene.theme[Ink::refused]));
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, scene.px(2.0F));
  }
  const std::string_view unit = gui::unit_of_bare(kind, units);
  const bool empty = in_its_place == words::kNotSet && !unit.empty();
  const std::string hint_text = empty ? fmt::format("{} ({})", words::kNotSet, unit) : in_its_place;
  const bool is_hint = entry.text.empty();
  const std::string seen = in_box(scene, is_hint ? hint_text : entry.text, 0.0F);
  // What is typed rolls in its box; what only stands there ends in dots.
  const bool is_dotted = !entry.held && seen != (is_hint ? hint_text : entry.text);
  if (!entry.held) entry.whole = !is_dotted;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ImU32 ink = ImGui::GetColorU32(is_hint ? ImGuiCol_TextDisabled : ImGuiCol_Text);
  if (is_dotted) {
    ImGui::PushStyleColor(ImGuiCol_Text, 0U);
    ImGui::PushStyleColor(ImGuiCol_TextDisabled, 0U);
  }
  const std::string typed = entry.text;
  ImGui::InputTextWithHint("##entry", is_hint ? seen.c_str() : hint_text.c_str(), &entry.text,
                           ImGuiInputTextFlags_AutoSelectAll);
  if (is_dotted) {
    ImGui::PopStyleColor(2);
    const ImVec2 pad = ImGui::GetStyle().FramePadding;
    if (ImGui::IsItemHovered()) hint(scene, is_hint ? hint_text : entry.text);
    ImGui::GetWindowDrawList()->AddText({corner.x + pad.x, corner.y + pad.y}, ink, seen.c_str());
  }
  if (is_wrong) {
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
  }
  // Esc leaves the box as Tab does: ImGui would put back what stood there before.
  if (entry.held && !ImGui::IsItemActive() && ImGui::IsKeyPressed(static_cast<int>(Key::escape), false))
    entry.text = typed;
  entry.held = ImGui::IsItemActive();
  if (!ImGui::IsItemDeactivatedAfterEdit() || (entry.text == shown && !is_wrong)) return {};
  return {gui::Perform{gui::SetValue{at, gui::as_typed_in(kind, entry.text, units, own_units(job))}}};
}

}  // namespace riserun::views
