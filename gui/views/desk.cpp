#include "gui/views/desk.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/words.h"
#include "gui/views/sheets/five_things.h"
#include "gui/views/sheets/numbers_sheet.h"
#include "gui/views/sheets/water_sheet.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

struct Tab {
  Sheet sheet;
  Do shows_it;
};
constexpr Tab kTabs[] = {{Sheet::connections, Do::sheet_connections},   {Sheet::water, Do::sheet_water},
                         {Sheet::measurements, Do::sheet_measurements}, {Sheet::list, Do::sheet_list},
                         {Sheet::numbers, Do::sheet_numbers},           {Sheet::file, Do::sheet_file}};

Requests draw_tabs(const Scene& scene, Sheet now) {
  Requests asked;
  const float right = ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x;
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {scene.px(14.0F), scene.px(7.0F)});
  for (const Tab& tab : kTabs) {
    const char* name = row_of(tab.shows_it).name;
    if (&tab != kTabs) {
      ImGui::SameLine(0.0F, scene.px(2.0F));
      if (ImGui::GetCursorScreenPos().x + ImGui::CalcTextSize(name).x + scene.px(28.0F) > right) ImGui::NewLine();
    }
    const bool chosen = now == tab.sheet;
    const bool wrong =
        tab.sheet == Sheet::file && !scene.model.job().problems.empty() && !gui::only_lacks_measures(scene.model.job());
    if (one_of(scene, name, chosen, wrong ? Ink::refused : Ink::text)) asked.push_back(tab.shows_it);
    note_item(scene, std::string("tab ") + name);
  }
  ImGui::PopStyleVar();
  return asked;
}

Requests draw_sheet_of_plan(const Scene& scene, Desk& desk) {
  switch (desk.sheet) {
    case Sheet::connections:
      return draw_connections(scene, desk.connections);
    case Sheet::water:
      return draw_water(scene);
    case Sheet::list: {
      begin_pane(scene, "list");
      Requests asked = draw_list(scene, desk.list);
      end_pane(scene, "list");
      return asked;
    }
    case Sheet::numbers:
      begin_pane(scene, "numbers");
      draw_numbers(scene);
      end_pane(scene, "numbers");
      return {};
    default:
      return {};
  }
}

/// With the elevation where the sheet stands alone.
Requests draw_measurements_pane(const Scene& scene, Desk& desk, bool alone, float width) {
  begin_pane(scene, "measurements", width);
  Requests asked;
  desk.measurements.with_elevation = alone;
  if (alone) asked = draw_five_things(scene, desk.measurements);
  append(asked, draw_measurements(scene, desk.measurements));
  forget_cursor(scene, desk.measurements);
  end_pane(scene, "measurements");
  return asked;
}

Requests draw_sheet(const Scene& scene, Desk& desk) {
  Requests asked;
  ImGui::BeginChild("sheet", {}, false);
  if (desk.sheet == Sheet::file) {
    begin_pane(scene, "file");
    asked = draw_job_file(scene, desk.file);
    end_pane(scene, "file");
  } else if (scene.shown.plan != nullptr) {
    const bool stale = begin_stale(scene);
    asked = draw_sheet_of_plan(scene, desk);
    end_stale(stale);
  } else if (gui::only_lacks_measures(scene.model.job())) {
    wrapped("Nothing to show yet: the job still lacks measurements.");
    if (ImGui::Button(row_of(Do::sheet_measurements).name)) asked.push_back(Do::sheet_measurements);
    note_item(scene, "to the measurements");
  }
  ImGui::EndChild();
  return asked;
}

/// The measurements stand beside the sheets where there is room, so that a change and what it does are seen together.
Requests draw_sheets(const Scene& scene, Desk& desk) {
  if (desk.sheet == Sheet::measurements) return draw_measurements_pane(scene, desk, true, 0.0F);
  const bool stands_beside =
      desk.sheet == Sheet::connections || desk.sheet == Sheet::water || desk.sheet == Sheet::numbers;
  if (!stands_beside || room_left().width() <= scene.px(1500.0F)) return draw_sheet(scene, desk);
  Requests asked = draw_measurements_pane(scene, desk, false, scene.px(390.0F));
  ImGui::SameLine();
  append(asked, draw_sheet(scene, desk));
  return asked;
}

/// The last thing that happened, and how the file stands.
Requests draw_bottom_line(const Scene& scene, const std::vector<gui::Notice>& notices, bool at_start) {
  Requests asked;
  const gui::JobState& job = scene.model.job();
  const std::string file =
      at_start ? std::string()
               : (job.file.path.empty() ? std::string("not saved yet") : job.file.path.filename().string()) +
                     (job.file.unsaved ? ", changed" : "");
  if (!notices.empty() && (!notices.back().of || *notices.back().of == job.revision)) {
    const gui::Notice& last = notices.back();
    note_item(scene, "notice " + last.text);
    wrapped(scene, last.kind == gui::Notice::Kind::refused ? Ink::refused : Ink::text, last.text);
    ImGui::SameLine(0.0F, scene.px(20.0F));
    if (ImGui::GetContentRegionAvail().x < ImGui::CalcTextSize(file.c_str()).x) ImGui::NewLine();
  }
  ImGui::TextDisabled("%s%s", file.c_str(), scene.model.plan().working ? ", working the plan out" : "");
  if (job.file.on_disk != gui::OnDisk::changed) return asked;
  ImGui::SameLine();
  ImGui::TextUnformatted("The file was changed on disk.");
  ImGui::SameLine();
  if (ImGui::SmallButton(words::kReload)) asked.push_back(gui::Reload{});
  ImGui::SameLine();
  if (ImGui::SmallButton(words::kKeepMine)) asked.push_back(gui::KeepMine{});
  return asked;
}

Requests offer_recovery(const Scene& scene) {
  Requests asked;
  const auto& copies = scene.model.recoveries();
  for (std::size_t i = 0; i < copies.size(); ++i) {
    ImGui::PushID(static_cast<int>(i));
    wrapped("'" + copies[i].name + "' was not saved when the program ended.");
    ImGui::SameLine();
    if (ImGui::SmallButton(words::kRecover)) asked.push_back(gui::Recover{copies[i]});
    ImGui::SameLine();
    if (ImGui::SmallButton(words::kDiscard)) asked.push_back(gui::Forget{copies[i]});
    ImGui::PopID();
  }
  return asked;
}

void take_notices(Frame& frame) {
  for (gui::Notice& notice : frame.model.take_notices()) {
    for (const quantity::Problem& problem : notice.problems) notice.text += fmt::format("\n{}", problem.text());
    frame.desk.notices.push_back(std::move(notice));
  }
}

/// A job that does not load is shown where its mistakes stand.
void show_mistakes(Frame& frame) {
  const gui::JobState& job = frame.model.job();
  if (job.problems.empty() || frame.desk.problems_of == job.revision) return;
  if (frame.desk.start.shown || gui::only_lacks_measures(job)) return;  // a new job, not a mistake
  frame.desk.problems_of = job.revision;
  // Their boxes say so, and take another value.
  if (frame.desk.sheet == Sheet::measurements && gui::only_first_measures_are_wrong(job)) return;
  frame.desk.sheet = Sheet::file;
  frame.desk.file.show(job.problems.front().line);
}

bool something_in_front(const Desk& desk) {
  return desk.question.ask != Ask::nothing || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId);
}

/// Esc where nothing is chosen, typed or open: from a job that has no file to the start page, which stands in front of
/// it, and from there back to it where something in it would be lost.
Requests led_by_escape(const Scene& scene, const Desk& desk) {
  if (desk.start.shown) return can_go_on(scene.model) ? Requests{BackToJob{}} : Requests{};
  const bool free = scene.model.job().file.path.empty() && !ImGui::GetIO().WantTextInput &&
                    desk.connections.canvas.selected.empty() && !desk.connections.canvas.pulled_from;
  return free ? Requests{BackToStart{}} : Requests{};
}

/// Tab goes into the boxes of the measurements, wherever the hand was before.
void enter_boxes(Desk& desk) {
  if (desk.sheet != Sheet::measurements || desk.start.shown || something_in_front(desk)) return;
  if (ImGui::IsAnyItemActive() || ImGui::IsAnyItemFocused() || ImGui::GetIO().KeyCtrl) return;
  if (!ImGui::IsKeyPressed(static_cast<int>(Key::tab), false)) return;
  desk.measurements.cursor = {gui::five_things().front().measures.front().at, 0};
}

bool is_possible(const CommandRow& command, const Scene& scene, const Desk& desk) {
  return command.possible == nullptr || command.possible(scene.model, desk);
}

/// What the keys of this frame ask for.
Requests read_keys(const Scene& scene, const Desk& desk) {
  Requests asked;
  const ImGuiIO& io = ImGui::GetIO();
  if (something_in_front(desk)) return asked;
  for (int key = static_cast<int>(Key::space); key < IM_ARRAYSIZE(io.KeysDown); ++key) {
    const bool repeats = key == static_cast<int>(Key::up) || key == static_cast<int>(Key::down);
    if (!ImGui::IsKeyPressed(key, repeats)) continue;
    const Shortcut press{static_cast<Key>(key), io.KeyCtrl, io.KeyShift};
    const bool plain = !press.ctrl && press.key < Key::f1;
    if (press.key == Key::escape && !desk.had_in_front) append(asked, led_by_escape(scene, desk));
    // Where there are fields, arrows, Enter and Space are theirs.
    if (plain && (desk.start.shown || (io.ConfigFlags & ImGuiConfigFlags_NavEnableKeyboard) != 0)) continue;
    if (plain && !io.WantTextInput && press.key >= digit(1) && press.key <= digit(9))
      append(asked, take_alternative(scene, desk.connections.canvas,
                                     static_cast<std::size_t>(key - static_cast<int>(Key::digit_0)) - 1));
    else if (const auto what = command_for(press, io.WantTextInput); what && is_possible(row_of(*what), scene, desk))
      asked.push_back(*what);
  }
  return asked;
}

/// Alt that goes down and up again alone opens the menus.
void watch_alt(Desk& desk) {
  constexpr int kLeftAlt = 342;  // GLFW's key codes
  constexpr int kRightAlt = 346;
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsKeyPressed(kLeftAlt, false) || ImGui::IsKeyPressed(kRightAlt, false)) desk.only_alt = true;
  for (int key = 0; key < IM_ARRAYSIZE(io.KeysDown); ++key)
    if (io.KeysDown[key] && key != kLeftAlt && key != kRightAlt) desk.only_alt = false;
  if (ImGui::IsAnyMouseDown()) desk.only_alt = false;
  if (!desk.only_alt || io.KeyAlt) return;
  desk.only_alt = false;
  if (!something_in_front(desk)) desk.menu_opens = Menu::file;
}

/// On the canvas the arrows walk along the parts, on the start page along its cards; everywhere else, and in menus and
/// questions, they move between entries.
void lend_arrows(Desk& desk) {
  const bool own = desk.start.shown || desk.sheet == Sheet::connections || desk.sheet == Sheet::water;
  const bool free = !something_in_front(desk) && !ImGui::GetIO().KeyAlt;
  desk.start.has_keys = free && desk.start.shown;
  ImGuiConfigFlags& flags = ImGui::GetIO().ConfigFlags;
  if (own && free)
    flags &= ~ImGuiConfigFlags_NavEnableKeyboard;
  else
    flags |= ImGuiConfigFlags_NavEnableKeyboard;
}

Requests draw(const Scene& scene, Desk& desk) {
  Requests asked = draw_menus(scene, desk);
  const ImGuiViewport& viewport = *ImGui::GetMainViewport();
  ImGui::SetNextWindowPos(viewport.WorkPos);
  ImGui::SetNextWindowSize(viewport.WorkSize);
  ImGui::Begin("desk", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus);
  append(asked, offer_recovery(scene));
  const bool at_start = is_in_front(desk.start, scene.model);
  if (!at_start) append(asked, draw_strip(scene, desk.reasons));
  if (!at_start) append(asked, draw_tabs(scene, desk.sheet));
  const float bottom = ImGui::GetTextLineHeightWithSpacing() * 1.2F;
  ImGui::BeginChild("sheets", {0.0F, std::max(scene.px(120.0F), ImGui::GetContentRegionAvail().y - bottom)}, false);
  append(asked, at_start ? draw_start_page(scene, desk.start) : draw_sheets(scene, desk));
  ImGui::EndChild();
  append(asked, draw_bottom_line(scene, desk.notices, at_start));
  append(asked, draw_questions(scene, desk.question));
  append(asked, draw_reasons(scene, desk.reasons));
  append(asked, draw_finder(scene, desk.finder));
  draw_help(scene, desk.help);
  desk.finder.opens = false;
  ImGui::End();
  return asked;
}

}  // namespace

void draw_desk(Frame& frame) {
  Desk& desk = frame.desk;
  bring_up(frame);
  take_notices(frame);
  show_mistakes(frame);
  desk.places.boxes.clear();
  desk.places.texts = 0;
  lend_arrows(desk);
  watch_alt(desk);
  const Scene scene = frame.scene();
  enter_boxes(desk);
  for (const Request& request : read_keys(scene, desk)) carry_out(frame, request);
  if (desk.shown.plan != nullptr) desk.playback.advance(desk.shown.timeline, seconds(ImGui::GetIO().DeltaTime));
  for (const Request& request : draw(scene, desk)) carry_out(frame, request);
  desk.had_in_front = something_in_front(desk);
}

}  // namespace riserun::views
