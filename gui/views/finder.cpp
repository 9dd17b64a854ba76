#include "gui/views/finder.h"

#include "gui/views/scene/command.h"
#include "gui/views/scene/found.h"

#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr std::size_t kMostRows = 12;
constexpr const char* kName = "Find";

bool pressed(Key key) { return ImGui::IsKeyPressed(static_cast<int>(key), true); }

}  // namespace

Requests draw_finder(const Scene& scene, FinderState& state) {
  if (state.opens) {
    state = {};
    ImGui::OpenPopup(kName);
  }
  const ImVec2 middle = ImGui::GetMainViewport()->GetWorkCenter();
  ImGui::SetNextWindowPos({middle.x, ImGui::GetMainViewport()->WorkPos.y + scene.px(60.0F)}, ImGuiCond_Always,
                          {0.5F, 0.0F});
  if (!ImGui::BeginPopup(kName, ImGuiWindowFlags_NoMove)) return {};
  Requests asked;
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(scene.px(520.0F));
  const std::string before = state.words;
  const bool entered = ImGui::InputTextWithHint("##words", "find a command, a part or a measurement", &state.words,
                                                ImGuiInputTextFlags_EnterReturnsTrue);
  note_item(scene, "find");
  if (state.words != before) state.chosen = 0;
  const auto rows = found_by(state.words, scene.shown, scene.model.job().job.get(), kMostRows);
  const int last = std::max(0, static_cast<int>(rows.size()) - 1);
  if (pressed(Key::down)) state.chosen = std::min(state.chosen + 1, last);
  if (pressed(Key::up)) state.chosen = std::max(state.chosen - 1, 0);
  if (rows.empty()) ImGui::TextDisabled("nothing is called that");
  bool taken = entered && !rows.empty();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    ImGui::PushID(static_cast<int>(i));
    const bool chosen = static_cast<int>(i) == state.chosen;
    if (ImGui::Selectable(rows[i].text.c_str(), chosen)) {
      state.chosen = static_cast<int>(i);
      taken = true;
    }
    note_item(scene, "found " + rows[i].text);
    ImGui::SameLine(scene.px(340.0F));
    ImGui::TextDisabled("%s", rows[i].beside.c_str());
    ImGui::PopID();
  }
  if (taken) {
    asked.push_back(rows[static_cast<std::size_t>(std::min(state.chosen, last))].leads_to);
    ImGui::CloseCurrentPopup();
  } else if (pressed(Key::escape)) {
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
  return asked;
}

}  // namespace riserun::views
