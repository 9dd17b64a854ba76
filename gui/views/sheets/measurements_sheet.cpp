#include "gui/views/sheets/measurements_sheet.h"

#include "report/words/remark_words.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cctype>
#include <optional>

namespace riserun::views {

namespace {

using gui::Field;
using gui::FieldKind;
using gui::JobPath;

std::string written_value(const gui::JobState& job, const JobPath& at) {
  const auto found = job.values.find(at);
  return found == job.values.end() ? std::string() : found->second.text;
}

/// The units that the job's file names, which its bare numbers are in.
std::optional<UnitSystem> own_units(const gui::JobState& job) {
  const std::string named = written_value(job, gui::at("units"));
  if (named == "inch") return UnitSystem::inch;
  return named == "metric" ? std::optional(UnitSystem::metric) : std::nullopt;
}

/// What a field holds that the job leaves out.
std::optional<report::SaidAssumption> assumed(const Scene& scene, const Field& field) {
  if (scene.shown.plan == nullptr) return std::nullopt;
  const std::string key = field.at.text();
  for (const plan::Assumption& assumption : scene.shown.plan->assumptions)
    if (assumption.key == key) return report::say(assumption, scene.shown.units);
  return std::nullopt;
}

std::string in_its_place(const std::optional<report::SaidAssumption>& stands) {
  return stands ? stands->value + " (assumed)" : "left out";
}

class Entries {
 public:
  Entries(const Scene& scene, MeasurementsState& state, Requests& asked)
      : scene_(scene), state_(state), asked_(asked), job_(scene.model.job()) {}

  /// Only the fields that have the sought word in their own name or in the group's.
  void group(const gui::FieldGroup& group) {
    if (std::none_of(group.fields.begin(), group.fields.end(), [&](const Field& each) { return sought(group, each); }))
      return;
    // A group that is out of sight is only as high as it was: a job may have hundreds.
    float& high = state_.heights[group.at];
    const float top = ImGui::GetCursorPosY();
    const bool holds_focus = state_.focused_group == group.at;
    if (high > 0.0F && !holds_focus && !ImGui::IsRectVisible({1.0F, high})) {
      ImGui::Dummy({1.0F, high});
      return;
    }
    ImGui::PushID(group.at.text().c_str());
    ImGui::Spacing();
    std::string title = group.title;
    if (!title.empty()) title[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(title[0])));
    strong(scene_, title);
    const float width = ImGui::GetContentRegionAvail().x;
    if (ImGui::BeginTable("fields", 2, ImGuiTableFlags_SizingStretchProp)) {
      ImGui::TableSetupColumn("label", ImGuiTableColumnFlags_WidthFixed, std::min(width * 0.48F, scene_.px(210.0F)));
      ImGui::TableSetupColumn("entry", ImGuiTableColumnFlags_WidthStretch);
      group_ = group.at;
      for (const Field& each : group.fields)
        if (sought(group, each)) field(each);
      ImGui::EndTable();
    }
    ImGui::PopID();
    high = std::max(1.0F, ImGui::GetCursorPosY() - top - ImGui::GetStyle().ItemSpacing.y);
  }

 private:
  bool sought(const gui::FieldGroup& group, const Field& field) const {
    const std::string& word = state_.sought;
    return (group.title + " " + field.label).find(word) != std::string::npos;
  }

  void field(const Field& field) {
    ImGui::PushID(field.at.text().c_str());
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    ImGui::PushTextWrapPos(0.0F);
    ImGui::TextUnformatted(field.label.c_str());
    ImGui::PopTextWrapPos();
    if (ImGui::IsItemHovered()) hint(scene_, field.at.text() + (field.needed ? ", the job needs it" : ""));
    ImGui::TableNextColumn();
    const auto wrong = job_.wrong_entries.find(field.at);
    const bool is_wrong = wrong != job_.wrong_entries.end();
    if (is_wrong) {
      ImGui::PushStyleColor(ImGuiCol_Border, packed(scene_.theme[Ink::refused]));
      ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, scene_.px(2.0F));
    }
    ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x, scene_.px(300.0F)));
    if (!field.choices.empty() || field.kind == FieldKind::yes_no)
      choose(field);
    else
      type(field, is_wrong ? &wrong->second : nullptr);
    note_item(scene_, "field " + field.at.text());
    if (!is_wrong) {
      ImGui::PopID();
      return;
    }
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    wrapped(scene_, Ink::refused, wrong->second.reason);
    note_item(scene_, "wrong " + field.at.text());
    if (ImGui::SmallButton("as it was")) asked_.push_back(gui::GiveUpEntry{field.at});
    note_item(scene_, "as it was " + field.at.text());
    ImGui::PopID();
  }

  void tell(const report::SaidAssumption& stands) const {
    hint(scene_, stands.what + ": " + stands.value + "\n" + stands.why);
  }

  void choose(const Field& field) {
    static const std::vector<std::string> kYesNo = {"yes", "no"};
    const std::vector<std::string>& choices = field.choices.empty() ? kYesNo : field.choices;
    const std::string now = written_value(job_, field.at);
    const auto stands = now.empty() ? assumed(scene_, field) : std::nullopt;
    const bool open = ImGui::BeginCombo("##choice", now.empty() ? in_its_place(stands).c_str() : now.c_str());
    if (stands && ImGui::IsItemHovered()) tell(*stands);
    if (!open) return;
    if (!field.needed && ImGui::Selectable("(leave it to the plan)", now.empty()) && !now.empty())
      asked_.push_back(gui::Perform{gui::SetValue{field.at, ""}});
    for (const std::string& choice : choices)
      if (ImGui::Selectable(choice.c_str(), choice == now) && choice != now)
        asked_.push_back(gui::Perform{gui::SetValue{field.at, choice}});
    ImGui::EndCombo();
  }

  void type(const Field& field, const gui::WrongEntry* wrong) {
    FieldText& entry = state_.fields[field.at];
    const std::string shown =
        gui::shown_in(field.kind, written_value(job_, field.at), scene_.shown.units, own_units(job_));
    if (!entry.held) entry.text = wrong != nullptr ? wrong->written : shown;
    const auto stands = shown.empty() ? assumed(scene_, field) : std::nullopt;
    ImGui::InputTextWithHint("##entry", in_its_place(stands).c_str(), &entry.text, ImGuiInputTextFlags_AutoSelectAll);
    entry.held = ImGui::IsItemActive();
    if (entry.held) state_.focused_group = group_;
    if (stands && ImGui::IsItemHovered()) tell(*stands);
    if (!ImGui::IsItemDeactivatedAfterEdit()) return;
    if (entry.text == shown && wrong == nullptr) return;
    const std::string typed = gui::as_typed_in(field.kind, entry.text, scene_.shown.units, own_units(job_));
    asked_.push_back(gui::Perform{gui::SetValue{field.at, typed}});
  }

  const Scene& scene_;
  MeasurementsState& state_;
  Requests& asked_;
  const gui::JobState& job_;
  JobPath group_;  // that is being drawn
};

}  // namespace

Requests draw_measurements(const Scene& scene, MeasurementsState& state) {
  if (scene.model.job().job == nullptr) {
    ImGui::TextWrapped(
        "The job file has mistakes; until they are mended its numbers can't be edited here. See the job file.");
    return {};
  }
  if (state.groups_of != scene.model.job().revision || state.groups.empty()) {
    state.groups = gui::fields_of(*scene.model.job().job);
    state.groups_of = scene.model.job().revision;
    state.heights.clear();
  }
  ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x, scene.px(300.0F)));
  if (ImGui::InputTextWithHint("##sought", "find a measurement", &state.sought)) state.heights.clear();
  Requests asked;
  Entries entries(scene, state, asked);
  for (const gui::FieldGroup& group : state.groups) entries.group(group);
  return asked;
}

}  // namespace riserun::views
