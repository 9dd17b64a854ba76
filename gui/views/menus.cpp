#include "gui/views/desk.h"

#include <fmt/format.h>
#include <imgui.h>

#include <optional>

namespace riserun::views {

namespace {

/// Undo and redo say what they would take back or do again.
std::string words_of(const Scene& scene, const CommandRow& command) {
  const gui::JobState& job = scene.model.job();
  if (command.what == Do::undo && job.undo_name) return fmt::format("Undo: {}", *job.undo_name);
  if (command.what == Do::redo && job.redo_name) return fmt::format("Redo: {}", *job.redo_name);
  return command.name;
}

void recent(const Scene& scene, Requests& asked) {
  if (!ImGui::BeginMenu("Recent", !scene.model.recent_files().empty())) return;
  for (const auto& file : scene.model.recent_files())
    if (ImGui::MenuItem(file.string().c_str())) asked.push_back(gui::Open{file});
  ImGui::EndMenu();
}

/// The menu that an arrow to the side leads to from an open one.
std::optional<Menu> beside(Menu menu) {
  constexpr int kMenus = static_cast<int>(Menu::help) + 1;
  const auto pressed = [](Key key) { return ImGui::IsKeyPressed(static_cast<int>(key), false); };
  const int step = pressed(Key::right) ? 1 : pressed(Key::left) ? -1 : 0;
  if (step == 0) return std::nullopt;
  return static_cast<Menu>((static_cast<int>(menu) + step + kMenus) % kMenus);
}

}  // namespace

Requests draw_menus(const Scene& scene, Desk& desk) {
  Requests asked;
  if (!ImGui::BeginMainMenuBar()) return asked;
  std::optional<Menu> next;
  for (const Menu menu : {Menu::file, Menu::edit, Menu::show, Menu::water, Menu::settings, Menu::help}) {
    if (desk.menu_opens == menu) ImGui::OpenPopup(name_of(menu));
    if (!ImGui::BeginMenu(name_of(menu))) continue;
    note_place(scene, std::string("menu ") + name_of(menu), {0.0F, 0.0F, 1.0F, 1.0F});
    if (const auto other = beside(menu)) {
      next = other;
      ImGui::CloseCurrentPopup();
    }
    for (const CommandRow& command : commands()) {
      if (command.menu != menu) continue;
      if (command.line_before) ImGui::Separator();
      const std::string words = words_of(scene, command);
      if (ImGui::MenuItem(words.c_str(), keys_of(command).c_str(), false,
                          command.possible == nullptr || command.possible(scene.model, desk)))
        asked.push_back(command.what);
      if (command.what == Do::open) recent(scene, asked);
    }
    ImGui::EndMenu();
  }
  desk.menu_opens = next;
  const gui::JobState& job = scene.model.job();
  const std::string name = job.job != nullptr && !desk.start.shown ? job.job->name : std::string();
  const float wide = ImGui::CalcTextSize(name.c_str()).x + scene.px(16.0F);
  if (ImGui::GetContentRegionAvail().x > wide) {
    ImGui::SameLine(ImGui::GetWindowWidth() - wide);
    ImGui::TextDisabled("%s", name.c_str());
  }
  ImGui::EndMainMenuBar();
  return asked;
}

}  // namespace riserun::views
