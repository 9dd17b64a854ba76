#include "gui/views/sheets/entry.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/words.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

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
  const std::string hint = empty ? fmt::format("{} ({})", words::kNotSet, unit) : in_its_place;
  ImGui::InputTextWithHint("##entry", hint.c_str(), &entry.text, ImGuiInputTextFlags_AutoSelectAll);
  if (is_wrong) {
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
  }
  entry.held = ImGui::IsItemActive();
  if (!ImGui::IsItemDeactivatedAfterEdit() || (entry.text == shown && !is_wrong)) return {};
  return {gui::Perform{gui::SetValue{at, gui::as_typed_in(kind, entry.text, units, own_units(job))}}};
}

}  // namespace riserun::views
