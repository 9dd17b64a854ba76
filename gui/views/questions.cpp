// What the window asks: for a file's name, for two ports, how many of a part there are, what to do with unsaved work.
#include "gui/model/edit/choices.h"
#include "gui/views/canvas/canvas_paint.h"
#include "gui/views/export.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

bool ask_for_text(Frame& frame, const char* label, std::string& text, bool first) {
  if (first && ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(frame.px(460.0F));
  return ImGui::InputText(label, &text, ImGuiInputTextFlags_EnterReturnsTrue);
}

void done(Frame& frame) {
  frame.desk.ask = Ask::nothing;
  ImGui::CloseCurrentPopup();
}

/// `yes` or Enter; the other button only closes.
bool settled(Frame& frame, const char* yes, bool entered, bool allowed = true) {
  ImGui::Spacing();
  ImGui::BeginDisabled(!allowed);
  const bool agreed = ImGui::Button(yes, {frame.px(150.0F), 0.0F}) || (entered && allowed);
  ImGui::EndDisabled();
  ImGui::SameLine();
  if (ImGui::Button("Leave it", {frame.px(110.0F), 0.0F}) || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false))
    done(frame);
  return agreed;
}

/// Folders and job files beside what is typed; a click goes into a folder or takes a file.
void folder_rows(Frame& frame, std::string& typed) {
  std::error_code no_throw;
  fs::path folder = fs::is_directory(typed, no_throw) ? fs::path(typed) : fs::path(typed).parent_path();
  if (folder.empty()) folder = fs::current_path(no_throw);
  std::vector<fs::path> rows;
  for (fs::directory_iterator at(folder, no_throw), end; !no_throw && at != end; at.increment(no_throw)) {
    const std::string name = at->path().filename().string();
    const bool hidden = name.empty() || name[0] == '.' || name.ends_with(".view.yaml");
    if (!hidden && (at->is_directory(no_throw) || at->path().extension() == ".yaml")) rows.push_back(at->path());
  }
  std::sort(rows.begin(), rows.end());
  ImGui::BeginChild("folder", {frame.px(460.0F), frame.px(220.0F)}, true);
  if (ImGui::Selectable("..  (the folder above)", false, ImGuiSelectableFlags_DontClosePopups))
    typed = folder.parent_path().string() + "/";
  for (const fs::path& row : rows) {
    const bool is_folder = fs::is_directory(row, no_throw);
    if (ImGui::Selectable((row.filename().string() + (is_folder ? "/" : "")).c_str(), typed == row.string(),
                          ImGuiSelectableFlags_DontClosePopups))
      typed = row.string() + (is_folder ? "/" : "");
  }
  ImGui::EndChild();
}

void ask_open(Frame& frame) {
  const bool entered = ask_for_text(frame, "##file", frame.desk.answer, true);
  folder_rows(frame, frame.desk.answer);
  std::error_code no_throw;
  if (!settled(frame, "Open", entered, fs::is_regular_file(frame.desk.answer, no_throw))) return;
  frame.model.open(frame.desk.answer);
  frame.desk.selected.clear();
  done(frame);
}

void ask_save_as(Frame& frame) {
  const bool entered = ask_for_text(frame, "##file", frame.desk.answer, true);
  folder_rows(frame, frame.desk.answer);
  std::error_code no_throw;
  if (fs::exists(frame.desk.answer, no_throw) && !fs::is_directory(frame.desk.answer, no_throw))
    ImGui::TextDisabled("The file is there already and will be written over.");
  if (!settled(frame, "Save", entered, !frame.desk.answer.empty() && !fs::is_directory(frame.desk.answer, no_throw)))
    return;
  frame.model.save_as(frame.desk.answer);
  done(frame);
}

void ask_export(Frame& frame) {
  ImGui::TextUnformatted("Folder for list.pdf, list.txt, list.json, plan.txt and plan.json:");
  const bool entered = ask_for_text(frame, "##folder", frame.desk.answer, true);
  if (!settled(frame, "Export", entered, !frame.desk.answer.empty() && frame.desk.shown.of != nullptr)) return;
  frame.desk.notices.push_back(export_plan(*frame.desk.shown.of, frame.desk.shown.units, frame.desk.answer));
  done(frame);
}

void ask_leave(Frame& frame) {
  ImGui::TextUnformatted("The job holds work that is not saved.");
  ImGui::Spacing();
  const gui::JobState& job = frame.model.job();
  if (ImGui::Button("Save and quit") || ImGui::IsKeyPressed(static_cast<int>(letter('S')), false)) {
    if (job.file.path.empty()) {
      done(frame);
      carry_out(frame, Do::save_as);
      return;
    }
    frame.model.save();
    frame.model.settle();
    frame.desk.leaving = !frame.model.job().file.unsaved;
    done(frame);
  }
  ImGui::SameLine();
  if (ImGui::Button("Quit without saving")) {
    frame.model.give_up_unsaved();
    frame.desk.leaving = true;
    done(frame);
  }
  ImGui::SameLine();
  if (ImGui::Button("Stay") || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) done(frame);
}

std::vector<std::string> port_names(const plan::Job& job) {
  std::vector<std::string> names;
  for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
    for (const plan::JobPort& port : *ports) names.push_back(port.name);
  return names;
}

bool choose_port(Frame& frame, const char* label, const std::vector<std::string>& names, std::string& chosen) {
  ImGui::SetNextItemWidth(frame.px(260.0F));
  if (!ImGui::BeginCombo(label, chosen.c_str())) return false;
  for (const std::string& name : names)
    if (ImGui::Selectable(name.c_str(), name == chosen)) chosen = name;
  ImGui::EndCombo();
  return true;
}

void ask_connect(Frame& frame) {
  const auto names = port_names(frame.desk.shown.of->job);
  choose_port(frame, "from", names, frame.desk.answer);
  choose_port(frame, "to", names, frame.desk.answer_2);
  ImGui::TextDisabled("or ends in:");
  ImGui::SetNextItemWidth(frame.px(260.0F));
  const bool entered = ImGui::InputTextWithHint("##device", "5 psi gauge, ball valve ...", &frame.desk.about_part,
                                                ImGuiInputTextFlags_EnterReturnsTrue);
  const bool enough = !frame.desk.answer.empty() && (!frame.desk.answer_2.empty() || !frame.desk.about_part.empty());
  if (!settled(frame, "Connect", entered, enough)) return;
  frame.model.perform(gui::Connect{frame.desk.answer, frame.desk.about_part.empty() ? frame.desk.answer_2 : "",
                                   frame.desk.about_part, ""});
  done(frame);
}

/// Says at once whether a port's notation is understood.
void ask_port(Frame& frame) {
  static constexpr const char* kOwners[] = {"of the reservoir", "of the table", "of the air supply"};
  ImGui::SetNextItemWidth(frame.px(260.0F));
  ImGui::Combo("##owner", &frame.desk.answer_choice, kOwners, 3);
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(frame.px(260.0F));
  ImGui::InputTextWithHint("name", "drain bung", &frame.desk.answer);
  ImGui::SetNextItemWidth(frame.px(260.0F));
  const bool entered = ImGui::InputTextWithHint("port", "1 FNPT, 3/4 GHT male ...", &frame.desk.answer_2,
                                                ImGuiInputTextFlags_EnterReturnsTrue);
  bool understood = false;
  if (!frame.desk.answer_2.empty()) {
    const auto read = frame.model.read_port(frame.desk.answer_2);
    understood = std::holds_alternative<catalog::PortTypeId>(read);
    ImGui::PushStyleColor(ImGuiCol_Text, packed(frame.theme[understood ? Ink::good : Ink::refused]));
    ImGui::PushTextWrapPos(frame.px(460.0F));
    ImGui::TextUnformatted(understood ? frame.model.catalog().written(std::get<catalog::PortTypeId>(read)).c_str()
                                      : std::get<catalog::NotationError>(read).message.c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
  }
  if (!settled(frame, "Add", entered, understood && !frame.desk.answer.empty())) return;
  frame.model.perform(
      gui::AddPort{static_cast<gui::PortOwner>(frame.desk.answer_choice), frame.desk.answer, frame.desk.answer_2});
  done(frame);
}

void ask_count(Frame& frame) {
  const catalog::Catalog& catalog = *frame.desk.shown.of->catalog;
  if (const auto part = catalog.find_part(frame.desk.about_part))
    ImGui::Text("How many %s are in the bin?", catalog.part(*part).name.c_str());
  ImGui::SetNextItemWidth(frame.px(140.0F));
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::InputInt("##count", &frame.desk.answer_choice);
  frame.desk.answer_choice = std::clamp(frame.desk.answer_choice, 0, 999);
  if (!settled(frame, "So many", ImGui::IsKeyPressed(static_cast<int>(Key::enter), false))) return;
  frame.model.perform(gui::CountInBin{frame.desk.about_part, frame.desk.answer_choice});
  done(frame);
}

void ask_choices(Frame& frame) {
  const plan::Plan& plan = *frame.desk.shown.of;
  std::size_t row = 0;
  while (row < plan.connections.size() && plan.connections[row].name != frame.desk.about_connection) ++row;
  const bool there = row < plan.connections.size() && plan.connections[row].chain() != nullptr &&
                     frame.desk.about_place < plan.connections[row].chain()->parts.size();
  if (there) {
    const auto choices = gui::choices_at(plan, row, frame.desk.about_place);
    ImGui::TextDisabled("%s",
                        choices.empty() ? "Nothing else goes onto both neighbours." : "Goes onto both neighbours:");
    ImGui::BeginChild("choices", {frame.px(460.0F), frame.px(260.0F)}, true);
    for (const gui::Choice& choice : choices) {
      const catalog::Part& part = plan.catalog->part(choice.part);
      const std::string text =
          fmt::format("{}, {}   {}", part.name, plan.catalog->material(part.material).name,
                      choice.in_bin > 0 ? fmt::format("{} in the bin", choice.in_bin) : write_price(part.price));
      if (!ImGui::Selectable(text.c_str())) continue;
      frame.model.perform(gui::SwapPart{frame.desk.about_connection, frame.desk.about_part, part.id});
      done(frame);
    }
    ImGui::EndChild();
  }
  if (ImGui::Button("Leave it") || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) done(frame);
}

struct Question {
  Ask ask;
  const char* title;
  void (*draw)(Frame&);
};
constexpr Question kQuestions[] = {
    {Ask::open, "Open a job", ask_open},
    {Ask::save_as, "Save the job as", ask_save_as},
    {Ask::export_to, "Export", ask_export},
    {Ask::leave, "Quit", ask_leave},
    {Ask::connect, "Connect two ports", ask_connect},
    {Ask::add_port, "Add a port", ask_port},
    {Ask::count_in_bin, "In the bin", ask_count},
    {Ask::other_choices, "Other parts here", ask_choices},
};

}  // namespace

void draw_questions(Frame& frame) {
  for (const Question& question : kQuestions) {
    if (frame.desk.ask == question.ask && frame.desk.ask_opens) {
      ImGui::OpenPopup(question.title);
      frame.desk.ask_opens = false;
    }
    const ImVec2 middle = ImGui::GetMainViewport()->GetCenter();
    ImGui::SetNextWindowPos(middle, ImGuiCond_Appearing, {0.5F, 0.5F});
    if (!ImGui::BeginPopupModal(question.title, nullptr, ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoMove))
      continue;
    question.draw(frame);
    ImGui::EndPopup();
  }
}

}  // namespace riserun::views
