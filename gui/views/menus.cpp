#include "gui/views/desk.h"

#include <fmt/format.h>
#include <imgui.h>

namespace riserun::views {

namespace {

/// Undo and redo say what they would take back or do again.
std::string words_of(const Frame& frame, const Command& command) {
  const gui::JobState& job = frame.model.job();
  if (command.what == Do::undo && job.undo_name) return fmt::format("Undo: {}", *job.undo_name);
  if (command.what == Do::redo && job.redo_name) return fmt::format("Redo: {}", *job.redo_name);
  return command.name;
}

bool possible(const Frame& frame, Do what) {
  const gui::JobState& job = frame.model.job();
  switch (what) {
    case Do::undo:
      return job.undo_name.has_value();
    case Do::redo:
      return job.redo_name.has_value();
    case Do::reload:
      return !job.file.path.empty();
    case Do::never_use:
    case Do::use_this:
    case Do::other_choices:
    case Do::count_in_bin:
      return frame.desk.selected.size() == 1;
    default:
      return true;
  }
}

void recent(Frame& frame) {
  if (!ImGui::BeginMenu("Recent", !frame.model.recent_files().empty())) return;
  const auto files = frame.model.recent_files();
  for (const auto& file : files)
    if (ImGui::MenuItem(file.string().c_str())) frame.model.open(file);
  ImGui::EndMenu();
}

}  // namespace

void draw_menus(Frame& frame) {
  if (!ImGui::BeginMainMenuBar()) return;
  for (const Menu menu : {Menu::file, Menu::edit, Menu::show, Menu::water, Menu::settings}) {
    if (!ImGui::BeginMenu(name_of(menu))) continue;
    for (const Command& command : commands()) {
      if (command.menu != menu) continue;
      if (command.line_before) ImGui::Separator();
      const std::string words = words_of(frame, command);
      if (ImGui::MenuItem(words.c_str(), keys_of(command).c_str(), false, possible(frame, command.what)))
        carry_out(frame, command.what);
      if (command.what == Do::open) recent(frame);
    }
    ImGui::EndMenu();
  }
  const gui::JobState& job = frame.model.job();
  const std::string name = job.job != nullptr && !job.job->name.empty() ? job.job->name : std::string();
  const float wide = ImGui::CalcTextSize(name.c_str()).x + frame.px(16.0F);
  if (ImGui::GetContentRegionAvail().x > wide) {
    ImGui::SameLine(ImGui::GetWindowWidth() - wide);
    ImGui::TextDisabled("%s", name.c_str());
  }
  ImGui::EndMainMenuBar();
}

}  // namespace riserun::views
