// Every number of the job, edited where it stands.
#include "gui/model/edit/fields.h"
#include "gui/views/desk.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cctype>

namespace riserun::views {

namespace {

using gui::Field;
using gui::FieldKind;
using gui::JobPath;

std::string written_value(const gui::JobState& job, const JobPath& at) {
  const auto found = job.values.find(at);
  return found == job.values.end() ? std::string() : found->second.text;
}

/// What a field holds that the job leaves out.
const plan::Assumption* assumed(const Frame& frame, const Field& field) {
  if (frame.desk.shown.of == nullptr) return nullptr;
  const std::string key = field.at.text();
  for (const plan::Assumption& assumption : frame.desk.shown.of->assumptions)
    if (assumption.key == key) return &assumption;
  return nullptr;
}

std::string in_its_place(const plan::Assumption* stands) {
  return stands != nullptr ? stands->value + " (assumed)" : "left out";
}

class Entries {
 public:
  explicit Entries(Frame& frame) : frame_(frame), job_(frame.model.job()) {}

  /// Only the fields that have the sought word in their own name or in the group's.
  void group(const gui::FieldGroup& group) {
    if (std::none_of(group.fields.begin(), group.fields.end(), [&](const Field& each) { return sought(group, each); }))
      return;
    // A group that is out of sight is only as high as it was: a job may have hundreds.
    float& high = frame_.desk.group_heights[group.at];
    const float top = ImGui::GetCursorPosY();
    const bool holds_focus = frame_.desk.focused_group == group.at;
    if (high > 0.0F && !holds_focus && !ImGui::IsRectVisible({1.0F, high})) {
      ImGui::Dummy({1.0F, high});
      return;
    }
    ImGui::PushID(group.at.text().c_str());
    ImGui::Spacing();
    ImGui::PushFont(frame_.fonts.strong);
    std::string title = group.title;
    if (!title.empty()) title[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(title[0])));
    ImGui::TextWrapped("%s", title.c_str());
    ImGui::PopFont();
    const float width = ImGui::GetContentRegionAvail().x;
    if (ImGui::BeginTable("fields", 2, ImGuiTableFlags_SizingStretchProp)) {
      ImGui::TableSetupColumn("label", ImGuiTableColumnFlags_WidthFixed, std::min(width * 0.48F, frame_.px(210.0F)));
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
    const std::string& word = frame_.desk.sought;
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
    if (ImGui::IsItemHovered()) hint(frame_, field.at.text() + (field.needed ? ", the job needs it" : ""));
    ImGui::TableNextColumn();
    const auto wrong = job_.wrong_entries.find(field.at);
    const bool is_wrong = wrong != job_.wrong_entries.end();
    if (is_wrong) {
      ImGui::PushStyleColor(ImGuiCol_Border, packed(frame_.theme[Ink::refused]));
      ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, frame_.px(2.0F));
    }
    ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x, frame_.px(300.0F)));
    if (!field.choices.empty() || field.kind == FieldKind::yes_no)
      choose(field);
    else
      type(field, is_wrong ? &wrong->second : nullptr);
    note_item(frame_, "field " + field.at.text());
    if (!is_wrong) {
      ImGui::PopID();
      return;
    }
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    ImGui::PushStyleColor(ImGuiCol_Text, packed(frame_.theme[Ink::refused]));
    ImGui::TextWrapped("%s", wrong->second.reason.c_str());
    ImGui::PopStyleColor();
    note_item(frame_, "wrong " + field.at.text());
    if (ImGui::SmallButton("as it was")) frame_.model.give_up_entry(field.at);
    note_item(frame_, "as it was " + field.at.text());
    ImGui::PopID();
  }

  void tell(const plan::Assumption& stands) const {
    hint(frame_, stands.what + ": " + stands.value + "\n" + stands.why);
  }

  void choose(const Field& field) {
    static const std::vector<std::string> kYesNo = {"yes", "no"};
    const std::vector<std::string>& choices = field.choices.empty() ? kYesNo : field.choices;
    const std::string now = written_value(job_, field.at);
    const plan::Assumption* stands = now.empty() ? assumed(frame_, field) : nullptr;
    const bool open = ImGui::BeginCombo("##choice", now.empty() ? in_its_place(stands).c_str() : now.c_str());
    if (stands != nullptr && ImGui::IsItemHovered()) tell(*stands);
    if (!open) return;
    if (!field.needed && ImGui::Selectable("(leave it to the plan)", now.empty()) && !now.empty())
      frame_.model.perform(gui::SetValue{field.at, ""});
    for (const std::string& choice : choices)
      if (ImGui::Selectable(choice.c_str(), choice == now) && choice != now)
        frame_.model.perform(gui::SetValue{field.at, choice});
    ImGui::EndCombo();
  }

  void type(const Field& field, const gui::WrongEntry* wrong) {
    FieldText& entry = frame_.desk.fields[field.at];
    const std::string shown = gui::shown_in(field.kind, written_value(job_, field.at), frame_.desk.shown.units);
    if (!entry.held) entry.text = wrong != nullptr ? wrong->written : shown;
    const plan::Assumption* stands = shown.empty() ? assumed(frame_, field) : nullptr;
    ImGui::InputTextWithHint("##entry", in_its_place(stands).c_str(), &entry.text, ImGuiInputTextFlags_AutoSelectAll);
    entry.held = ImGui::IsItemActive();
    if (entry.held) frame_.desk.focused_group = group_;
    if (stands != nullptr && ImGui::IsItemHovered()) tell(*stands);
    if (!ImGui::IsItemDeactivatedAfterEdit()) return;
    if (entry.text != shown || wrong != nullptr) frame_.model.perform(gui::SetValue{field.at, entry.text});
  }

  Frame& frame_;
  const gui::JobState& job_;
  JobPath group_;  // that is being drawn
};

}  // namespace

void draw_measurements(Frame& frame) {
  if (frame.model.job().job == nullptr) {
    ImGui::TextWrapped(
        "The job file has mistakes; until they are mended its numbers can't be edited here. See the job file.");
    return;
  }
  if (frame.desk.field_groups_of != frame.model.job().revision || frame.desk.field_groups.empty()) {
    frame.desk.field_groups = gui::fields_of(*frame.model.job().job);
    frame.desk.field_groups_of = frame.model.job().revision;
    frame.desk.group_heights.clear();
  }
  ImGui::SetNextItemWidth(std::min(ImGui::GetContentRegionAvail().x, frame.px(300.0F)));
  if (ImGui::InputTextWithHint("##sought", "find a measurement", &frame.desk.sought)) frame.desk.group_heights.clear();
  Entries entries(frame);
  for (const gui::FieldGroup& group : frame.desk.field_groups) entries.group(group);
}

}  // namespace riserun::views
