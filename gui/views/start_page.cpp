#include "gui/views/start_page.h"

#include "catalog/load/load.h"
#include "gui/model/session/first_measures.h"
#include "gui/model/session/job_file.h"
#include "quantity/input_error.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <sstream>
#include <system_error>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

constexpr float kStartColumn = 330.0F;  // points
constexpr float kThreeWide = 1060.0F;   // points across for the three beside each other

/// The comments at the head of the text, up to the first full stop.
std::string first_sentence(const std::string& text) {
  std::istringstream lines(text);
  std::string said;
  for (std::string line; std::getline(lines, line) && line.starts_with("#");) {
    const std::size_t begin = line.find_first_not_of("# ");
    if (begin == std::string::npos) break;
    said += (said.empty() ? "" : " ") + line.substr(begin);
  }
  const std::size_t stop = said.find(". ");
  return stop == std::string::npos ? said : said.substr(0, stop + 1);
}

std::string job_name(const std::string& text, const fs::path& file) {
  constexpr std::string_view kKey = "\nname: ";
  const std::size_t at = text.find(kKey);
  if (at == std::string::npos) return file.stem().string();
  const std::size_t begin = at + kKey.size();
  return text.substr(begin, text.find('\n', begin) - begin);
}

bool key_down(Key key) { return ImGui::IsKeyPressed(static_cast<int>(key), true); }

/// The cards of the column, as rows of them all.
std::vector<std::size_t> rows_of(const std::vector<StartCard>& cards, int column) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < cards.size(); ++row)
    if (cards[row].column == column) rows.push_back(row);
  return rows;
}

/// The card beside this one in the next column that has any, at the same height or the lowest there.
std::size_t beside(const std::vector<StartCard>& cards, std::size_t from, int step) {
  constexpr int kColumns = 3;
  const std::vector<std::size_t> own = rows_of(cards, cards[from].column);
  const auto down = static_cast<std::size_t>(std::find(own.begin(), own.end(), from) - own.begin());
  for (int column = cards[from].column + step; column >= 0 && column < kColumns; column += step)
    if (const auto rows = rows_of(cards, column); !rows.empty()) return rows[std::min(down, rows.size() - 1)];
  return from;
}

/// Moves the mark as the keys of this frame say.
void walk(StartState& state) {
  if (!state.has_keys || state.cards.empty()) return;
  const std::size_t last = state.cards.size() - 1;
  state.marked = std::min(state.marked, last);
  const bool back = ImGui::GetIO().KeyShift;
  if (key_down(Key::down) || (key_down(Key::tab) && !back)) state.marked = std::min(state.marked + 1, last);
  if (key_down(Key::up) || (key_down(Key::tab) && back)) state.marked -= state.marked > 0 ? 1 : 0;
  if (key_down(Key::left)) state.marked = beside(state.cards, state.marked, -1);
  if (key_down(Key::right)) state.marked = beside(state.cards, state.marked, 1);
}

bool opened_by_key(const StartState& state) {
  return state.has_keys && (ImGui::IsKeyPressed(static_cast<int>(Key::enter), false) ||
                            ImGui::IsKeyPressed(static_cast<int>(Key::space), false));
}

/// A card: a name in strong letters, what goes with it below. Whether it is chosen.
bool choice(const Scene& scene, StartState& state, int column, const char* id, const std::string& name,
            const std::string& below) {
  const std::size_t row = state.cards.size();
  state.cards.push_back({id, column});
  const float pad = scene.px(8.0F);
  const float wide = ImGui::GetContentRegionAvail().x;
  const ImFont& small = *scene.fonts.small;
  const ImVec2 under = small.CalcTextSizeA(small.FontSize, FLT_MAX, wide - 2.0F * pad, below.c_str());
  const float line = scene.fonts.strong->FontSize;
  const float high = 2.0F * pad + line + (below.empty() ? 0.0F : under.y + scene.px(3.0F));
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const bool clicked = ImGui::InvisibleButton(id, {wide, high});
  const ImVec2 moved = ImGui::GetIO().MouseDelta;
  if (ImGui::IsItemHovered() && (moved.x != 0.0F || moved.y != 0.0F)) state.marked = row;
  const bool marked = state.marked == row;
  if (marked && !ImGui::IsItemVisible()) ImGui::SetScrollHereY();
  note_item(scene, id);
  if (marked) note_item(scene, std::string("marked ") + id);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 end{at.x + wide, at.y + high};
  list.AddRectFilled(at, end, packed(scene.theme[marked ? Ink::field_over : Ink::panel]), scene.px(2.0F));
  list.AddRect(at, end, packed(scene.theme[marked ? Ink::accent : Ink::line]), scene.px(2.0F), 0,
               scene.px(marked ? 2.0F : 1.0F));
  list.AddText(scene.fonts.strong, line, {at.x + pad, at.y + pad}, packed(scene.theme[Ink::text]), name.c_str());
  list.AddText(scene.fonts.small, small.FontSize, {at.x + pad, at.y + pad + line + scene.px(3.0F)},
               packed(scene.theme[marked ? Ink::text : Ink::faint_text]), below.c_str(), nullptr, wide - 2.0F * pad);
  return clicked || (marked && opened_by_key(state));
}

void heading(const Scene& scene, const char* words) {
  ImGui::PushFont(scene.fonts.large);
  ImGui::TextUnformatted(words);
  ImGui::PopFont();
  note_item(scene, std::string("start ") + words);
  ImGui::Spacing();
}

void what_it_is_for(const Scene& scene, float wide) {
  const float left = ImGui::GetCursorPosX();
  ImGui::PushTextWrapPos(left + wide);
  ImGui::TextUnformatted(
      "Plans a sealed water tank under a work table, out of which shop air lifts the water up into the table: "
      "pressure, "
      "times, every fitting to buy and every cut.");
  ImGui::PopTextWrapPos();
  note_item(scene, "start what for");
  ImGui::Dummy({1.0F, scene.px(10.0F)});
}

void begin_new(const Scene& scene, StartState& state, Requests& asked) {
  if (can_go_on(scene.model)) {
    const std::size_t missing = gui::still_to_give(scene.model.job()).size();
    heading(scene, "Not saved yet");
    const std::string below = missing == 0
                                  ? std::string("All is as it was left. Esc does the same.")
                                  : fmt::format("All is as it was left, {} still to give. Esc does the same.",
                                                missing == 1 ? "1 measure" : fmt::format("{} measures", missing));
    if (choice(scene, state, 0, "start go on", "Go on with the job", below)) asked.push_back(BackToJob{});
    ImGui::Spacing();
  }
  heading(scene, "New");
  if (choice(scene, state, 0, "start new", "New job",
             "Five things are asked: tank, sheet and stays, table, water, compressor."))
    asked.push_back(Do::start_new);
  ImGui::Spacing();
  if (choice(scene, state, 0, "start open", "Open a job file", "A file of yours from its folder."))
    asked.push_back(Do::open);
}

void recent_jobs(const Scene& scene, StartState& state, Requests& asked) {
  heading(scene, "Recent");
  const auto& files = scene.model.recent_files();
  if (files.empty()) ImGui::TextDisabled("Jobs that you save stand here.");
  for (std::size_t i = 0; i < files.size(); ++i) {
    const std::string id = "recent " + files[i].string();
    if (choice(scene, state, 1, id.c_str(), files[i].stem().string(), files[i].parent_path().string()))
      asked.push_back(gui::Open{files[i]});
    ImGui::Spacing();
  }
}

/// Beside the catalog, in the source tree as where the program is installed.
fs::path examples_folder() {
  try {
    return catalog::find_catalog_folder().parent_path() / "examples";
  } catch (const quantity::InputError&) {
    return {};
  }
}

void examples(const Scene& scene, StartState& state, Requests& asked) {
  heading(scene, "Examples");
  if (!state.examples) state.examples = read_examples(examples_folder());
  if (state.examples->empty()) ImGui::TextDisabled("The folder of examples is not there.");
  for (const Example& example : *state.examples) {
    const std::string id = "example " + example.file.stem().string();
    if (choice(scene, state, 2, id.c_str(), example.name, example.said)) {
      const auto text = gui::read_whole(example.file);
      if (const auto* good = std::get_if<std::string>(&text)) asked.push_back(gui::StartNew{false, *good});
    }
    ImGui::Spacing();
  }
}

}  // namespace

std::vector<Example> read_examples(const fs::path& folder) {
  std::vector<Example> found;
  std::error_code no_throw;
  for (fs::directory_iterator at(folder, no_throw), end; !no_throw && at != end; at.increment(no_throw)) {
    const fs::path& file = at->path();
    if (file.extension() != ".yaml" || file.string().ends_with(".view.yaml")) continue;
    const auto text = gui::read_whole(file);
    if (const auto* good = std::get_if<std::string>(&text))
      found.push_back({file, job_name(*good, file), first_sentence(*good)});
  }
  std::sort(found.begin(), found.end(), [](const Example& a, const Example& b) { return a.name < b.name; });
  return found;
}

bool is_in_front(StartState& state, const gui::Model& model) {
  const std::uint64_t document = model.job().first_revision;
  if (state.shown && state.over == 0) state.over = document;
  if (state.over != document) state.shown = false;
  return state.shown;
}

bool can_go_on(const gui::Model& model) {
  const gui::FileState& file = model.job().file;
  return file.path.empty() && file.unsaved;
}

Requests draw_start_page(const Scene& scene, StartState& state) {
  Requests asked;
  walk(state);
  state.cards.clear();
  ImGui::BeginChild("start", {}, false);
  const bool three = ImGui::GetContentRegionAvail().x > scene.px(kThreeWide);
  ImGui::SetCursorPosY(scene.px(8.0F));
  const float column = three ? scene.px(kStartColumn) : ImGui::GetContentRegionAvail().x;
  const float left = std::max(0.0F, (ImGui::GetContentRegionAvail().x - 3.0F * column - scene.px(40.0F)) / 2.0F);
  if (three) ImGui::SetCursorPosX(left);
  what_it_is_for(scene, three ? 3.0F * column + scene.px(40.0F) : column);
  if (three) ImGui::SetCursorPosX(left);
  const auto part = [&](const char* id, auto draw) {
    ImGui::BeginGroup();
    ImGui::PushID(id);
    // A child of its own size would roll by itself: a table of one column keeps to its width and grows.
    if (ImGui::BeginTable(id, 1, 0, {column, 0.0F})) {
      ImGui::TableNextColumn();
      draw();
      ImGui::EndTable();
    }
    ImGui::PopID();
    ImGui::EndGroup();
    if (three) ImGui::SameLine(0.0F, scene.px(20.0F));
  };
  part("new", [&] { begin_new(scene, state, asked); });
  part("recent", [&] { recent_jobs(scene, state, asked); });
  part("examples", [&] { examples(scene, state, asked); });
  ImGui::EndChild();
  return asked;
}

}  // namespace riserun::views
