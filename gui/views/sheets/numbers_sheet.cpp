#include "gui/views/sheets/numbers_sheet.h"

#include "gui/views/sheets/remarks.h"
#include "report/words/remark_words.h"

#include <imgui.h>

#include <initializer_list>
#include <string>

namespace riserun::views {

namespace {

void figure_row(const Scene& scene, const Figure& figure) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  wrapped(figure.label);
  ImGui::TableNextColumn();
  strong(scene, figure.value);
  if (ImGui::IsItemHovered()) hint(scene, figure.where_from);
  ImGui::TableNextColumn();
  wrapped(scene, Ink::faint_text, figure.beside);
}

void losses(const Scene& scene, const char* title, const std::vector<hydraulics::ElementLoss>& all) {
  if (all.empty() || !ImGui::CollapsingHeader(title)) return;
  if (!ImGui::BeginTable(title, 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp)) return;
  for (const char* name : {"where the head goes", "K", "velocity", "head"}) ImGui::TableSetupColumn(name);
  ImGui::TableHeadersRow();
  for (const hydraulics::ElementLoss& loss : all) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    wrapped(loss.element);
    if (!loss.source.empty() && ImGui::IsItemHovered()) hint(scene, loss.source);
    for (const std::string& cell : {write_number(loss.k, 2), write_velocity(loss.velocity, scene.shown.units, 2),
                                    write_head(loss.head, scene.shown.units, 2)}) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(cell.c_str());
    }
  }
  ImGui::EndTable();
}

void assumptions(const Scene& scene, const plan::Plan& plan) {
  if (!ImGui::BeginTable("assumed", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp)) return;
  for (const plan::Assumption& assumption : plan.assumptions) {
    ImGui::TableNextRow();
    const report::SaidAssumption said = report::say(assumption, scene.shown.units);
    for (const std::string* cell : {&said.what, &said.value, &said.why}) {
      ImGui::TableNextColumn();
      wrapped(*cell);
    }
  }
  ImGui::EndTable();
}

/// What the last change of the job has changed.
void draw_changes(const Scene& scene) {
  if (scene.shown.changes.empty()) return;
  strong(scene, "The last change");
  if (ImGui::BeginTable("changes", 3, ImGuiTableFlags_RowBg)) {
    for (const Change& change : scene.shown.changes) {
      for (const std::string& text : {change.label, "was " + change.before, "now " + change.now}) {
        ImGui::TableNextColumn();
        wrapped(text);
      }
      note_item(scene, "changed " + change.label);
    }
    ImGui::EndTable();
  }
  ImGui::Spacing();
}

void figure_table(const Scene& scene, const FigureGroup& group) {
  ImGui::Spacing();
  strong(scene, group.title);
  if (!ImGui::BeginTable(group.title.c_str(), 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_SizingStretchProp)) return;
  ImGui::TableSetupColumn("label", ImGuiTableColumnFlags_WidthStretch, 3.0F);
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 4.0F);
  ImGui::TableSetupColumn("beside", ImGuiTableColumnFlags_WidthStretch, 4.0F);
  for (const Figure& figure : group.figures) figure_row(scene, figure);
  ImGui::EndTable();
}

/// What a person looks for together: the figures of some topics, and what goes with them.
struct Group {
  const char* title;
  std::initializer_list<plan::Topic> topics;
};

using plan::Topic;
const Group kDanger{"Danger", {Topic::whole_job, Topic::walls, Topic::relief, Topic::leak_test, Topic::care}};
const Group kCutAndWeld{"Cut and weld", {Topic::riser, Topic::connections, Topic::list}};
const Group kFillAndDrain{"Fill and drain", {Topic::levels, Topic::transfer}};

bool begins(const Scene& scene, const char* title) {
  const bool open = ImGui::CollapsingHeader(title, ImGuiTreeNodeFlags_DefaultOpen);
  note_item(scene, std::string("group ") + title);
  return open;
}

bool draw_group(const Scene& scene, const Group& group) {
  if (!begins(scene, group.title)) return false;
  for (const Topic topic : group.topics) {
    for (const FigureGroup& figures : scene.shown.figures)
      if (figures.topic == topic) figure_table(scene, figures);
    draw_remarks(scene, topic);
  }
  return true;
}

}  // namespace

void draw_numbers(const Scene& scene) {
  const plan::Plan& plan = *scene.shown.plan;
  draw_changes(scene);
  if (draw_group(scene, kDanger)) draw_standing(scene);
  draw_group(scene, kCutAndWeld);
  if (draw_group(scene, kFillAndDrain)) {
    losses(scene, "Losses while filling", plan.transfer.fill.losses_at_mean);
    losses(scene, "Losses while draining", plan.transfer.drain.losses_at_mean);
  }
  if (begins(scene, "Assumed")) assumptions(scene, plan);
}

}  // namespace riserun::views
