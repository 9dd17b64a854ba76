// What menus and keys do.
#include "gui/views/canvas/canvas.h"
#include "gui/views/desk.h"
#include "gui/views/export.h"

#include <algorithm>
#include <chrono>
#include <filesystem>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

const gui::Node* chosen(const Desk& desk) {
  if (desk.selected.size() != 1 || desk.shown.of == nullptr) return nullptr;
  for (const gui::Node& node : desk.shown.sketch.nodes)
    if (node.key == *desk.selected.begin()) return &node;
  return nullptr;
}

void ask(Desk& desk, Ask what, std::string answer = "") {
  desk.ask = what;
  desk.ask_opens = true;
  desk.answer = std::move(answer);
  desk.answer_2.clear();
  desk.answer_choice = 0;
}

std::string folder_of_job(const Frame& frame) {
  const fs::path& file = frame.model.job().file.path;
  std::error_code no_throw;
  return (file.empty() ? fs::current_path(no_throw) : file.parent_path()).string();
}

void on_part(Frame& frame, Do what) {
  Desk& desk = frame.desk;
  const gui::Node* node = chosen(desk);
  if (node == nullptr || !node->part) return;
  const std::string part = desk.shown.of->catalog->part(*node->part).id;
  const std::string connection = gui::name_of_connection(*desk.shown.of, node->connection);
  const bool one_run = node->connection < desk.shown.of->connections.size();
  if (connection.empty()) return;
  desk.about_part = part;
  desk.about_connection = connection;
  desk.about_place = node->place;
  if (what == Do::never_use) frame.model.perform(gui::NeverUse{connection, part});
  if (what == Do::use_this) frame.model.perform(gui::UsePart{connection, part});
  if (what == Do::other_choices && one_run && node->kind == gui::NodeKind::part) ask(desk, Ask::other_choices);
  if (what != Do::count_in_bin) return;
  ask(desk, Ask::count_in_bin);
  desk.answer_choice = std::max(1, desk.shown.of->job.bin.count_of(*node->part));
}

/// The next part along the runs, in the order in which they are drawn.
void walk(Desk& desk, int step) {
  const auto& nodes = desk.shown.sketch.nodes;
  if (nodes.empty()) return;
  const auto count = static_cast<int>(nodes.size());
  int at = step > 0 ? -1 : count;
  for (int i = 0; i < count; ++i)
    if (desk.selected.count(nodes[static_cast<std::size_t>(i)].key) > 0) at = i;
  at = (at + step + count) % count;
  desk.selected = {nodes[static_cast<std::size_t>(at)].key};
}

void zoom(Frame& frame, float factor) {
  gui::ViewState view = frame.model.view();
  const Lens lens = zoomed({0.0F, 0.0F, view.pan, view.zoom, frame.scale}, factor, frame.desk.canvas_middle);
  view.pan = lens.pan;
  view.zoom = lens.zoom;
  frame.model.set_view(std::move(view));
}

void clock(Desk& desk, Do what) {
  const Time whole = desk.shown.timeline.whole();
  Playback& hand = desk.playback;
  if (what == Do::play) {
    if (hand.now >= whole) hand.now = Time{};
    hand.playing = !hand.playing;
    return;
  }
  hand.playing = false;
  constexpr double kStep = 0.02;  // of the timeline
  if (what == Do::step_on) hand.now = std::min(whole, hand.now + whole * kStep);
  if (what == Do::step_back) hand.now = std::max(Time{}, hand.now - whole * kStep);
  if (what == Do::to_start) hand.now = Time{};
  if (what == Do::to_end) hand.now = whole;
}

void settings(Frame& frame, Do what) {
  gui::ViewState view = frame.model.view();
  if (what == Do::inch_or_metric)
    view.units = frame.model.units() == UnitSystem::inch ? UnitSystem::metric : UnitSystem::inch;
  if (what == Do::light_or_dark) view.looks = view.looks == gui::Looks::light ? gui::Looks::dark : gui::Looks::light;
  frame.model.set_view(std::move(view));
  constexpr float kStep = 1.1F;
  if (what == Do::larger_text) frame.desk.text_size = std::min(frame.desk.text_size * kStep, 2.5F);
  if (what == Do::smaller_text) frame.desk.text_size = std::max(frame.desk.text_size / kStep, 0.6F);
  if (what == Do::usual_text) frame.desk.text_size = 1.0F;
}

void print(Frame& frame) {
  Desk& desk = frame.desk;
  if (desk.held == nullptr) return;
  if (desk.printing.valid()) {
    desk.notices.push_back({gui::Notice::Kind::refused, "The printer has not taken the last list yet", {}});
    return;
  }
  desk.printing = start_print(desk.held, desk.shown.units, folder_of_job(frame));
  desk.notices.push_back({gui::Notice::Kind::done, "Handing the list to the printer ...", {}});
}

void on_file(Frame& frame, Do what) {
  Desk& desk = frame.desk;
  switch (what) {
    case Do::start_new:
      frame.model.start_new();
      desk.fit_wanted = desk.opening_view = true;
      break;
    case Do::open:
      ask(desk, Ask::open, folder_of_job(frame) + "/");
      break;
    case Do::save:
      if (frame.model.job().file.path.empty())
        ask(desk, Ask::save_as, folder_of_job(frame) + "/job.yaml");
      else
        frame.model.save();
      break;
    case Do::save_as:
      ask(desk, Ask::save_as,
          frame.model.job().file.path.empty() ? folder_of_job(frame) + "/job.yaml"
                                              : frame.model.job().file.path.string());
      break;
    case Do::reload:
      frame.model.reload();
      break;
    case Do::export_list:
      ask(desk, Ask::export_to, folder_of_job(frame));
      break;
    case Do::print:
      print(frame);
      break;
    case Do::leave:
      if (frame.model.job().file.unsaved)
        ask(desk, Ask::leave);
      else
        desk.leaving = true;
      break;
    default:
      break;
  }
}

}  // namespace

void take_dropped(Frame& frame, const std::vector<std::string>& files) {
  if (files.empty()) return;
  for (const std::string& file : files) frame.model.open(file);
  frame.desk.selected.clear();
}

bool take_printed(Desk& desk) {
  if (!desk.printing.valid() || desk.printing.wait_for(std::chrono::seconds(0)) != std::future_status::ready)
    return false;
  desk.notices.push_back(desk.printing.get());
  return true;
}

void carry_out(Frame& frame, Do what) {
  Desk& desk = frame.desk;
  const bool planned = desk.shown.of != nullptr;
  if (what <= Do::leave) return on_file(frame, what);
  if (what >= Do::inch_or_metric) return settings(frame, what);
  if (what >= Do::sheet_connections && what <= Do::sheet_file) {
    desk.sheet = static_cast<Sheet>(static_cast<int>(what) - static_cast<int>(Do::sheet_connections));
    return;
  }
  if (what == Do::undo) return frame.model.undo();
  if (what == Do::redo) return frame.model.redo();
  if (!planned) return;
  switch (what) {
    case Do::connect:
      desk.about_part.clear();
      ask(desk, Ask::connect);
      break;
    case Do::add_port:
      ask(desk, Ask::add_port);
      break;
    case Do::fit:
      desk.fit_wanted = true;
      break;
    case Do::nearer:
      zoom(frame, 1.2F);
      break;
    case Do::farther:
      zoom(frame, 1.0F / 1.2F);
      break;
    case Do::next_part:
      walk(desk, 1);
      break;
    case Do::part_before:
      walk(desk, -1);
      break;
    case Do::all_parts:
      for (const gui::Node& node : desk.shown.sketch.nodes) desk.selected.insert(node.key);
      break;
    case Do::play:
    case Do::step_on:
    case Do::step_back:
    case Do::to_start:
    case Do::to_end:
      clock(desk, what);
      break;
    default:
      on_part(frame, what);
  }
}

}  // namespace riserun::views
