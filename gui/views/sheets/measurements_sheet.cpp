#include "gui/views/sheets/measurements_sheet.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/command.h"
#include "gui/views/scene/words.h"
#include "report/words/remark_words.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cctype>
#include <optional>
#include <utility>

namespace riserun::views {

namespace {

using gui::Field;
using gui::FieldKind;
using gui::JobPath;

constexpr float kLeastBox = 300.0F;  // points; wider where what stands in it needs that

/// What a field holds that the job leaves out.
std::optional<report::SaidAssumption> assumed(const Scene& scene, const Field& field) {
  if (scene.shown.plan == nullptr) return std::nullopt;
  const std::string key = field.at.text();
  for (const plan::Assumption& assumption : scene.shown.plan->assumptions)
    if (assumption.key == key) return report::say(assumption, scene.shown.units);
  return std::nullopt;
}

std::string in_its_place(const std::optional<report::SaidAssumption>& stands) {
  return stands ? stands->value + " (assumed)" : words::kNotSet;
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
    if (state_.with_elevation && gui::is_first_measure(field.at)) return false;
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
    const auto wrong = gui::wrong_at(job_, field.at);
    whole_.clear();
    if (!field.choices.empty() || field.kind == FieldKind::yes_no)
      choose(field);
    else
      type(field);
    note_item(scene_, "field " + field.at.text());
    if (!whole_.empty()) {
      wrapped(scene_, Ink::faint_text, whole_);
      note_item(scene_, "whole " + field.at.text());
    }
    if (!wrong) {
      ImGui::PopID();
      return;
    }
    wrapped(scene_, Ink::refused, wrong->reason);
    note_item(scene_, "wrong " + field.at.text());
    if (ImGui::SmallButton(words::kDiscard)) asked_.push_back(gui::GiveUpEntry{field.at});
    note_item(scene_, "discard " + field.at.text());
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
    const std::string words = now.empty() ? in_its_place(stands) : now;
    const float arrow = ImGui::GetFrameHeight();
    ImGui::SetNextItemWidth(box_for(scene_, words, scene_.px(kLeastBox), arrow));
    const std::string seen = in_box(scene_, words, arrow);
    if (seen != words) whole_ = words;
    const bool open = ImGui::BeginCombo("##choice", seen.c_str());
    if (stands && ImGui::IsItemHovered()) tell(*stands);
    if (!open) return;
    if (!field.needed && ImGui::Selectable("(leave it to the plan)", now.empty()) && !now.empty())
      asked_.push_back(gui::Perform{gui::SetValue{field.at, ""}});
    for (const std::string& choice : choices)
      if (ImGui::Selectable(choice.c_str(), choice == now) && choice != now)
        asked_.push_back(gui::Perform{gui::SetValue{field.at, choice}});
    ImGui::EndCombo();
  }

  void type(const Field& field) {
    FieldText& entry = state_.fields[field.at];
    place_cursor(scene_, state_, field.at);
    const auto stands = written_value(job_, field.at).empty() ? assumed(scene_, field) : std::nullopt;
    const std::string instead = in_its_place(stands);
    ImGui::SetNextItemWidth(box_for(scene_, entry.text.empty() ? instead : entry.text, scene_.px(kLeastBox), 0.0F));
    append(asked_, type_entry(scene_, entry, field.at, field.kind, instead));
    if (!entry.whole) whole_ = entry.text.empty() ? instead : entry.text;
    if (entry.held) state_.focused_group = group_;
    if (stands && ImGui::IsItemHovered()) tell(*stands);
  }

  const Scene& scene_;
  MeasurementsState& state_;
  Requests& asked_;
  const gui::JobState& job_;
  JobPath group_;      // that is being drawn
  std::string whole_;  // of the field that is being drawn: what its box has no room for
};

}  // namespace

void place_cursor(const Scene& scene, const MeasurementsState& state, const gui::JobPath& at) {
  if (state.cursor.at == at && state.cursor.not_in != scene.model.job().first_revision) ImGui::SetKeyboardFocusHere();
}

void lead_on(MeasurementsState& state, const gui::JobPath& at, bool in_drawing) {
  const auto pressed = [](Key key) { return ImGui::IsKeyPressed(static_cast<int>(key), false); };
  const bool by_enter = ImGui::IsItemDeactivated() && (pressed(Key::enter) || pressed(Key::keypad_enter));
  const bool by_tab = in_drawing && ImGui::IsItemActive() && pressed(Key::tab) && !ImGui::GetIO().KeyShift;
  if (by_enter || by_tab) state.then = gui::measure_after(at);
}

void forget_cursor(const Scene& scene, MeasurementsState& state) {
  if (state.cursor.not_in == scene.model.job().first_revision) return;
  state.cursor = {std::move(state.then), 0};
  state.then = {};
}

Requests draw_measurements(const Scene& scene, MeasurementsState& state) {
  if (scene.model.job().job == nullptr) {
    if (gui::still_to_give(scene.model.job()).empty())
      wrapped(state.with_elevation ? "The job file has mistakes. What is red above can be typed anew; the other boxes "
                                     "come back once all is mended."
                                   : "The job file has mistakes. Its boxes come back once all is mended, in the job "
                                     "file or under Measurements.");
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
