#include "gui/views/questions.h"

#include "gui/model/edit/choices.h"
#include "gui/views/export.h"
#include "gui/views/scene/words.h"
#include "gui/views/sheets/entry.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

bool ask_for_text(const Scene& scene, const char* label, std::string& text, bool first) {
  if (first && ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(scene.px(460.0F));
  return ImGui::InputText(label, &text, ImGuiInputTextFlags_EnterReturnsTrue);
}

void done(QuestionState& state) {
  state.ask = Ask::nothing;
  ImGui::CloseCurrentPopup();
}

/// `yes` or Enter; the other button only closes.
bool settled(const Scene& scene, QuestionState& state, const char* yes, bool entered, bool allowed = true) {
  ImGui::Spacing();
  ImGui::BeginDisabled(!allowed);
  const bool agreed = ImGui::Button(yes, {scene.px(150.0F), 0.0F}) || (entered && allowed);
  ImGui::EndDisabled();
  ImGui::SameLine();
  if (ImGui::Button(words::kCancel, {scene.px(110.0F), 0.0F}) ||
      ImGui::IsKeyPressed(static_cast<int>(Key::escape), false))
    done(state);
  return agreed;
}

/// Folders and job files beside what is typed; a click goes into a folder or takes a file.
void folder_rows(const Scene& scene, std::string& typed) {
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
  ImGui::BeginChild("folder", {scene.px(460.0F), scene.px(220.0F)}, true);
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

void ask_open(const Scene& scene, QuestionState& state, Requests& asked) {
  const bool entered = ask_for_text(scene, "##file", state.answer, true);
  folder_rows(scene, state.answer);
  std::error_code no_throw;
  if (!settled(scene, state, "Open", entered, fs::is_regular_file(state.answer, no_throw))) return;
  asked.push_back(gui::Open{state.answer});
  done(state);
}

/// Without an ending it gets the one by which job files are found again.
fs::path as_job_file(const std::string& typed) {
  fs::path file = typed;
  if (file.has_filename() && !file.has_extension()) file += ".yaml";
  return file;
}

void ask_save_as(const Scene& scene, QuestionState& state, Requests& asked) {
  const bool entered = ask_for_text(scene, "##file", state.answer, true);
  folder_rows(scene, state.answer);
  std::error_code no_throw;
  const fs::path file = as_job_file(state.answer);
  if (fs::exists(file, no_throw) && !fs::is_directory(state.answer, no_throw))
    ImGui::TextDisabled("The file is there already and will be written over.");
  if (!settled(scene, state, "Save", entered, !state.answer.empty() && !fs::is_directory(state.answer, no_throw)))
    return;
  asked.push_back(gui::SaveAs{file});
  if (state.onward) asked.push_back(GoOn{*state.onward});
  done(state);
}

void ask_export(const Scene& scene, QuestionState& state, Requests& asked) {
  ImGui::TextUnformatted("Folder for list and plan, and for plumbing, section and plots as SVG, PNG and PDF:");
  const bool entered = ask_for_text(scene, "##folder", state.answer, true);
  std::vector<std::string_view> there;
  for (const std::string_view paper : kPapers) {
    std::error_code no_throw;
    if (!state.answer.empty() && fs::exists(fs::path(state.answer) / paper, no_throw)) there.push_back(paper);
  }
  if (!there.empty())
    wrapped(scene, Ink::caution, fmt::format("There already, and will be written over: {}", fmt::join(there, ", ")));
  const char* const yes = there.empty() ? "Export" : "Write over";
  if (!settled(scene, state, yes, entered, !state.answer.empty() && scene.shown.plan != nullptr)) return;
  asked.push_back(ExportTo{state.answer});
  done(state);
}

enum class Unsaved { nothing, save, discard, cancel };

/// What to do with work that is not saved, before it would be lost.
Unsaved ask_about_unsaved(const Scene& scene, const char* save, const char* discard) {
  ImGui::TextUnformatted("The job holds work that is not saved.");
  ImGui::Spacing();
  Unsaved answer = Unsaved::nothing;
  const auto button = [&](const char* words, Unsaved meaning, Key key) {
    if (ImGui::Button(words) || (key != Key::none && ImGui::IsKeyPressed(static_cast<int>(key), false)))
      answer = meaning;
    note_item(scene, std::string("answer ") + words);
  };
  button(save, Unsaved::save, letter('S'));
  ImGui::SameLine();
  button(discard, Unsaved::discard, Key::none);
  ImGui::SameLine();
  button(words::kCancel, Unsaved::cancel, Key::escape);
  return answer;
}

void ask_leave(const Scene& scene, QuestionState& state, Requests& asked) {
  const Unsaved answer = ask_about_unsaved(scene, "Save and quit", "Quit without saving");
  if (answer == Unsaved::nothing) return;
  done(state);
  if (answer == Unsaved::discard) append(asked, {gui::GiveUpUnsaved{}, Leave{}});
  if (answer != Unsaved::save) return;
  if (scene.model.job().file.path.empty())
    asked.push_back(Do::save_as);
  else
    append(asked, {gui::Save{}, Leave{true}});
}

/// The same command, but what is not saved goes.
gui::Command discarding(gui::Command command) {
  std::visit(
      [](auto& one) {
        if constexpr (requires { one.discard; }) one.discard = true;
      },
      command);
  return command;
}

void ask_unsaved(const Scene& scene, QuestionState& state, Requests& asked) {
  const Unsaved answer = ask_about_unsaved(scene, "Save", words::kDiscard);
  if (answer == Unsaved::nothing || !state.onward) return;
  const gui::Command onward = *state.onward;
  done(state);
  if (answer == Unsaved::discard) asked.push_back(discarding(onward));
  if (answer != Unsaved::save) return;
  if (scene.model.job().file.path.empty()) {
    std::error_code no_throw;
    state.put(Ask::save_as, (fs::current_path(no_throw) / "job.yaml").string());
    state.onward = onward;
  } else {
    append(asked, {gui::Save{}, GoOn{onward}});
  }
}

std::vector<std::string> port_names(const plan::Job& job) {
  std::vector<std::string> names;
  for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
    for (const plan::JobPort& port : *ports) names.push_back(port.name);
  return names;
}

void choose_port(const Scene& scene, const char* label, const std::vector<std::string>& names, std::string& chosen) {
  ImGui::SetNextItemWidth(scene.px(260.0F));
  const std::string seen = in_box(scene, chosen, ImGui::GetFrameHeight());
  if (!ImGui::BeginCombo(label, seen.c_str())) {
    if (seen != chosen && ImGui::IsItemHovered()) hint(scene, chosen);
    return;
  }
  for (const std::string& name : names)
    if (ImGui::Selectable(name.c_str(), name == chosen)) chosen = name;
  ImGui::EndCombo();
}

void ask_connect(const Scene& scene, QuestionState& state, Requests& asked) {
  const auto names = port_names(scene.shown.plan->job);
  choose_port(scene, "from", names, state.answer);
  choose_port(scene, "to", names, state.answer_2);
  ImGui::TextDisabled("or ends in:");
  ImGui::SetNextItemWidth(scene.px(260.0F));
  const bool entered = ImGui::InputTextWithHint("##device", "5 psi gauge, ball valve ...", &state.part,
                                                ImGuiInputTextFlags_EnterReturnsTrue);
  const bool enough = !state.answer.empty() && (!state.answer_2.empty() || !state.part.empty());
  if (!settled(scene, state, "Connect", entered, enough)) return;
  asked.push_back(gui::Perform{gui::Connect{state.answer, state.part.empty() ? state.answer_2 : "", state.part, ""}});
  done(state);
}

/// Says at once whether a port's notation is understood.
void ask_port(const Scene& scene, QuestionState& state, Requests& asked) {
  struct Owner {
    gui::PortOwner owner;
    const char* words;
  };
  static constexpr Owner kOwners[] = {{gui::PortOwner::reservoir, "of the reservoir"},
                                      {gui::PortOwner::table, "of the table"},
                                      {gui::PortOwner::air, "of the air supply"}};
  ImGui::SetNextItemWidth(scene.px(260.0F));
  ImGui::Combo(
      "##owner", &state.choice,
      [](void*, int row, const char** words) {
        *words = kOwners[row].words;
        return true;
      },
      nullptr, static_cast<int>(std::size(kOwners)));
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(scene.px(260.0F));
  ImGui::InputTextWithHint("name", "drain bung", &state.answer);
  ImGui::SetNextItemWidth(scene.px(260.0F));
  const bool entered = ImGui::InputTextWithHint("port", "1 FNPT, 3/4 GHT male ...", &state.answer_2,
                                                ImGuiInputTextFlags_EnterReturnsTrue);
  bool understood = false;
  if (!state.answer_2.empty()) {
    const auto read = scene.model.read_port(state.answer_2);
    const auto* made = std::get_if<catalog::MadePort>(&read);
    understood = made != nullptr;
    ImGui::PushStyleColor(ImGuiCol_Text, packed(scene.theme[understood ? Ink::good : Ink::refused]));
    ImGui::PushTextWrapPos(scene.px(460.0F));
    const catalog::Catalog& catalog = scene.model.catalog();
    const std::string said = !made ? std::get<catalog::NotationError>(read).message
                             : made->material
                                 ? catalog.written(made->type) + ", " + catalog.material(*made->material).name
                                 : catalog.written(made->type);
    ImGui::TextUnformatted(said.c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
  }
  if (!settled(scene, state, "Add", entered, understood && !state.answer.empty())) return;
  asked.push_back(gui::Perform{gui::AddPort{kOwners[state.choice].owner, state.answer, state.answer_2}});
  done(state);
}

void ask_count(const Scene& scene, QuestionState& state, Requests& asked) {
  const catalog::Catalog& catalog = *scene.shown.plan->catalog;
  if (const auto part = catalog.find_part(state.part))
    ImGui::Text("How many %s are in stock?", catalog.part(*part).name.c_str());
  ImGui::SetNextItemWidth(scene.px(140.0F));
  if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
  ImGui::InputInt("##count", &state.choice);
  state.choice = std::clamp(state.choice, 0, 999);
  if (!settled(scene, state, words::kOk, ImGui::IsKeyPressed(static_cast<int>(Key::enter), false))) return;
  asked.push_back(gui::Perform{gui::CountInBin{state.part, state.choice}});
  done(state);
}

/// What the bin holds first, then by price.
std::vector<gui::Choice> sorted_choices(const plan::Plan& plan, std::size_t connection, std::size_t place) {
  std::vector<gui::Choice> choices = gui::choices_at(plan, connection, place);
  std::stable_sort(choices.begin(), choices.end(), [&](const gui::Choice& a, const gui::Choice& b) {
    const auto key = [&](const gui::Choice& choice) {
      return std::pair(choice.in_bin == 0, plan.catalog->part(choice.part).price);
    };
    return key(a) < key(b);
  });
  return choices;
}

/// The arrows walk along the rows, Return takes the one that they are on.
void ask_choices(const Scene& scene, QuestionState& state, Requests& asked) {
  const plan::Plan& plan = *scene.shown.plan;
  std::size_t row = 0;
  while (row < plan.connections.size() && plan.connections[row].name != state.connection) ++row;
  const bool there = row < plan.connections.size() && plan.connections[row].chain() != nullptr &&
                     state.place < plan.connections[row].chain()->parts.size();
  const auto choices = there ? sorted_choices(plan, row, state.place) : std::vector<gui::Choice>{};
  std::optional<std::size_t> taken;
  if (there) {
    ImGui::TextDisabled("%s",
                        choices.empty() ? "Nothing else goes onto both neighbours." : "Goes onto both neighbours:");
    const auto pressed = [](Key key) { return ImGui::IsKeyPressed(static_cast<int>(key), true); };
    const int before = state.choice;
    if (ImGui::IsWindowAppearing()) state.choice = 0;
    if (pressed(Key::down)) ++state.choice;
    if (pressed(Key::up)) --state.choice;
    state.choice = std::clamp(state.choice, 0, std::max(0, static_cast<int>(choices.size()) - 1));
    ImGui::BeginChild("choices", {scene.px(460.0F), scene.px(260.0F)}, true, ImGuiWindowFlags_NoNav);
    for (std::size_t i = 0; i < choices.size(); ++i) {
      const catalog::Part& part = plan.catalog->part(choices[i].part);
      const std::string text =
          fmt::format("{}, {}   {}", part.name, plan.catalog->material(part.material).name,
                      choices[i].in_bin > 0 ? fmt::format("{} in stock", choices[i].in_bin) : write_price(part.price));
      const bool chosen = static_cast<int>(i) == state.choice;
      if (ImGui::Selectable(text.c_str(), chosen)) taken = i;
      note_item(scene, fmt::format("choice {}{}", i, chosen ? " chosen" : ""));
      if (chosen && before != state.choice) ImGui::SetScrollHereY();
    }
    ImGui::EndChild();
  }
  const bool cancelled = button(words::kCancel);
  if (!taken && !choices.empty() && !ImGui::IsWindowAppearing() && !ImGui::IsItemFocused() &&
      ImGui::IsKeyPressed(static_cast<int>(Key::enter), false))
    taken = static_cast<std::size_t>(state.choice);
  if (taken && !cancelled)
    asked.push_back(
        gui::Perform{gui::SwapPart{state.connection, state.part, plan.catalog->part(choices[*taken].part).id}});
  if (taken || cancelled || ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) done(state);
}

struct Question {
  Ask ask;
  const char* title;
  void (*draw)(const Scene&, QuestionState&, Requests&);
};
constexpr Question kQuestions[] = {
    {Ask::open, "Open a job", ask_open},
    {Ask::save_as, "Save the job as", ask_save_as},
    {Ask::export_to, "Export", ask_export},
    {Ask::leave, "Quit", ask_leave},
    {Ask::unsaved, "Unsaved work", ask_unsaved},
    {Ask::connect, "Connect two ports", ask_connect},
    {Ask::add_port, "Add a port", ask_port},
    {Ask::count_in_bin, words::kInStock, ask_count},
    {Ask::other_choices, "Swap this part", ask_choices},
};

}  // namespace

void QuestionState::put(Ask what, std::string first_answer) {
  ask = what;
  opens = true;
  answer = std::move(first_answer);
  answer_2.clear();
  choice = 0;
  onward.reset();
}

Requests draw_questions(const Scene& scene, QuestionState& state) {
  Requests asked;
  for (const Question& question : kQuestions) {
    if (state.ask == question.ask && state.opens) {
      ImGui::OpenPopup(question.title);
      state.opens = false;
    }
    const ImVec2 middle = ImGui::GetMainViewport()->GetCenter();
    ImGui::SetNextWindowPos(middle, ImGuiCond_Appearing, {0.5F, 0.5F});
    if (!ImGui::BeginPopupModal(question.title, nullptr, ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoMove))
      continue;
    question.draw(scene, state, asked);
    ImGui::EndPopup();
  }
  return asked;
}

}  // namespace riserun::views
