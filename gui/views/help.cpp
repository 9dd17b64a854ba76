#include "gui/views/help.h"

#include "gui/views/scene/command.h"
#include "gui/views/scene/words.h"
#include "report/words/glossary.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace riserun::views {

namespace {

constexpr const char* kHelpName = "Help";

void row(const Scene& scene, const std::string& name, const std::string& says) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  strong(scene, name);
  note_item(scene, "help " + name);
  ImGui::TableNextColumn();
  wrapped(says);
}

/// As the table of commands has them, menu by menu; and what the hand does.
void keys(const Scene& scene) {
  for (const CommandRow& command : commands())
    if (const std::string key = keys_of(command); !key.empty()) row(scene, key, command.name);
  row(scene, "Alt, F10", "The menus; arrows go through them");
  row(scene, "Esc",
      "Closes what is open; leaves a box, which keeps what was typed; lets go of what is chosen; from a job that has "
      "no "
      "file yet it leads to the start page, and back with all entries");
  row(scene, "drag a port", "Connects it with the port where it is let go");
  row(scene, "drag a part", "Moves its run");
  row(scene, "right click", "What can be done with a part, a port, a dimension or the sheet");
  row(scene, "right drag", "Moves the sheet");
  row(scene, "wheel", "Zooms to where the pointer is");
}

void glossary(const Scene& scene) {
  for (const report::Term& term : report::glossary()) row(scene, std::string(term.name), std::string(term.meaning));
}

}  // namespace

void draw_help(const Scene& scene, HelpState& state) {
  if (state.opens) {
    state.opens = false;
    ImGui::OpenPopup(kHelpName);
  }
  const ImVec2 all = ImGui::GetMainViewport()->WorkSize;
  const ImVec2 size{std::min(scene.px(720.0F), 0.9F * all.x), std::min(scene.px(560.0F), 0.85F * all.y)};
  ImGui::SetNextWindowPos(ImGui::GetMainViewport()->GetWorkCenter(), ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowSize(size);
  if (!ImGui::BeginPopupModal(kHelpName, nullptr, ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize)) return;
  for (const HelpPage page : {HelpPage::keys, HelpPage::glossary}) {
    const char* name = row_of(page == HelpPage::keys ? Do::keys : Do::glossary).name;
    if (one_of(scene, name, state.page == page)) state.page = page;
    note_item(scene, std::string("help page ") + name);
    ImGui::SameLine();
  }
  ImGui::NewLine();
  const float foot = ImGui::GetFrameHeightWithSpacing();
  ImGui::BeginChild("rows", {0.0F, ImGui::GetContentRegionAvail().y - foot});
  if (ImGui::BeginTable("rows", 2, ImGuiTableFlags_RowBg)) {
    ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthFixed, scene.px(170.0F));
    ImGui::TableSetupColumn("says", ImGuiTableColumnFlags_WidthStretch);
    if (state.page == HelpPage::keys)
      keys(scene);
    else
      glossary(scene);
    ImGui::EndTable();
  }
  ImGui::EndChild();
  if (ImGui::Button(words::kClose) || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false))
    ImGui::CloseCurrentPopup();
  note_item(scene, "close help");
  ImGui::EndPopup();
}

}  // namespace riserun::views
