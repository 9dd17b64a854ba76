// What menus and keys do: one row a command.
#include "gui/model/edit/take_out.h"
#include "gui/model/session/first_measures.h"
#include "gui/views/canvas/canvas.h"
#include "gui/views/desk.h"
#include "gui/views/export.h"
#include "gui/views/scene/words.h"

#include <algorithm>
#include <filesystem>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

// ---- files

std::string folder_of_job(const Frame& frame) {
  const fs::path& file = frame.model.job().file.path;
  std::error_code no_throw;
  return (file.empty() ? fs::current_path(no_throw) : file.parent_path()).string();
}

void start_new(Frame& frame) { carry_out(frame, gui::StartNew{false, gui::blank_job()}); }

void ask_open(Frame& frame) { frame.desk.question.put(Ask::open, folder_of_job(frame) + "/"); }

void ask_save_as(Frame& frame) {
  const fs::path& file = frame.model.job().file.path;
  frame.desk.question.put(Ask::save_as, file.empty() ? folder_of_job(frame) + "/job.yaml" : file.string());
}

void save(Frame& frame) {
  if (frame.model.job().file.path.empty()) return ask_save_as(frame);
  frame.model.post(gui::Save{});
}

void ask_export(Frame& frame) { frame.desk.question.put(Ask::export_to, folder_of_job(frame)); }

void print(Frame& frame) {
  Desk& desk = frame.desk;
  if (desk.shown.plan == nullptr) return;
  if (desk.printing.valid()) {
    desk.notices.push_back({gui::Notice::Kind::refused, "The printer has not taken the last list yet", {}});
    return;
  }
  desk.printing = start_print(desk.shown.plan, desk.shown.units, folder_of_job(frame));
  desk.notices.push_back({gui::Notice::Kind::done, "Handing the list to the printer ...", {}});
}

void leave(Frame& frame) {
  if (frame.model.job().file.unsaved)
    frame.desk.question.put(Ask::leave);
  else
    frame.desk.leaving = true;
}

template <class Posted>
void post(Frame& frame) {
  frame.model.post(Posted{});
}

// ---- the chosen part

struct ChosenPart {
  const gui::Node* node;
  std::string id;          // of the part
  std::string connection;  // name
};

std::optional<ChosenPart> chosen_part(const Desk& desk) {
  const gui::Node* node = chosen_node(desk.shown.sketch, desk.connections.canvas);
  if (node == nullptr || !node->part) return std::nullopt;
  std::string connection = gui::name_of_connection(*desk.shown.plan, node->connection);
  if (connection.empty()) return std::nullopt;
  return ChosenPart{node, desk.shown.plan->catalog->part(*node->part).id, std::move(connection)};
}

/// A question about the chosen part.
void ask_about(Desk& desk, Ask what, const ChosenPart& chosen) {
  desk.question.put(what);
  desk.question.part = chosen.id;
  desk.question.connection = chosen.connection;
  desk.question.place = chosen.node->place;
}

/// Of a device: the row of the branch that it ends.
std::size_t device_end(const plan::Plan& plan, const gui::Node& node) {
  const plan::ConnectionPlan* connection = gui::connection_at(plan, node.connection);
  return connection != nullptr && connection->branched ? node.place : 0;
}

void never_use(Frame& frame) {
  if (const auto chosen = chosen_part(frame.desk))
    frame.model.post(gui::Perform{gui::NeverUse{chosen->connection, chosen->id}});
}

/// What the job asks for goes out of it; what was only found for a run is kept out of that run.
void remove_part(Frame& frame) {
  const auto chosen = chosen_part(frame.desk);
  if (!chosen) return;
  const plan::Plan& plan = *frame.desk.shown.plan;
  if (chosen->node->kind == gui::NodeKind::device)
    frame.model.post(gui::Perform{gui::TakeOut{chosen->connection, chosen->id, device_end(plan, *chosen->node)}});
  else if (gui::is_needed(plan.job, chosen->connection, *chosen->node->part))
    frame.model.post(gui::Perform{gui::TakeOut{chosen->connection, chosen->id, std::nullopt}});
  else
    never_use(frame);
}

void mend_all(Frame& frame) {
  if (frame.desk.shown.plan != nullptr && frame.model.plan().current)
    frame.model.post(gui::Perform{gui::MendAll{frame.desk.shown.units}});
}

void use_this(Frame& frame) {
  if (const auto chosen = chosen_part(frame.desk))
    frame.model.post(gui::Perform{gui::UsePart{chosen->connection, chosen->id}});
}

void ask_other_choices(Frame& frame) {
  const auto chosen = chosen_part(frame.desk);
  if (!chosen || chosen->node->kind != gui::NodeKind::part) return;
  const plan::ConnectionPlan* connection_of = gui::connection_at(*frame.desk.shown.plan, chosen->node->connection);
  const bool one_run = connection_of != nullptr && !connection_of->branched;
  if (one_run) ask_about(frame.desk, Ask::other_choices, *chosen);
}

void ask_count(Frame& frame) {
  const auto chosen = chosen_part(frame.desk);
  if (!chosen) return;
  ask_about(frame.desk, Ask::count_in_bin, *chosen);
  frame.desk.question.choice = std::max(1, frame.desk.shown.plan->job.bin.count_of(*chosen->node->part));
}

void ask_connect(Frame& frame) {
  if (frame.desk.shown.plan == nullptr) return;
  frame.desk.question.put(Ask::connect);
  frame.desk.question.part.clear();
}

void ask_port(Frame& frame) {
  if (frame.desk.shown.plan != nullptr) frame.desk.question.put(Ask::add_port);
}

// ---- what is seen

template <Sheet sheet>
void show(Frame& frame) {
  frame.desk.sheet = sheet;
}

void why(Frame& frame) { frame.desk.reasons.opens = frame.desk.shown.plan != nullptr; }

void find(Frame& frame) { frame.desk.finder.opens = true; }

template <HelpPage page>
void help(Frame& frame) {
  frame.desk.help = {true, page};
}

void menus(Frame& frame) { frame.desk.menu_opens = Menu::file; }

void fit(Frame& frame) { frame.desk.connections.canvas.fit_wanted = true; }

constexpr float kZoomStep = 1.2F;

void zoom(Frame& frame, float factor) {
  gui::ViewState view = frame.model.view();
  const CanvasState& canvas = frame.desk.connections.canvas;
  const Lens now{0.0F, 0.0F, view.pan, view.zoom, frame.scale};
  const PixelBox box{0.0F, 0.0F, 2.0F * canvas.middle.x, 2.0F * canvas.middle.y};
  const Lens lens = zoomed(now, factor, canvas.middle, least_zoom(now, frame.desk.shown.layout.all, box));
  view.pan = lens.pan;
  view.zoom = lens.zoom;
  frame.model.post(gui::SetView{std::move(view)});
}
void nearer(Frame& frame) { zoom(frame, kZoomStep); }
void farther(Frame& frame) { zoom(frame, 1.0F / kZoomStep); }

/// The next part along the runs, in the order in which they are drawn.
template <int step>
void walk(Frame& frame) {
  const auto& nodes = frame.desk.shown.sketch.nodes;
  std::set<std::string>& selected = frame.desk.connections.canvas.selected;
  if (nodes.empty()) return;
  const auto count = static_cast<int>(nodes.size());
  int at = step > 0 ? -1 : count;
  for (int i = 0; i < count; ++i)
    if (selected.count(nodes[static_cast<std::size_t>(i)].key) > 0) at = i;
  at = (at + step + count) % count;
  selected = {nodes[static_cast<std::size_t>(at)].key};
}

void select_all(Frame& frame) {
  for (const gui::Node& node : frame.desk.shown.sketch.nodes) frame.desk.connections.canvas.selected.insert(node.key);
}

// ---- the clock

void play(Frame& frame) {
  Playback& clock = frame.desk.playback;
  if (frame.desk.shown.plan == nullptr) return;
  if (clock.now >= frame.desk.shown.timeline.whole()) clock.now = Time{};
  clock.playing = !clock.playing;
}

void seek(Frame& frame, Time to) {
  frame.desk.playback.now = std::clamp(to, Time{}, frame.desk.shown.timeline.whole());
  frame.desk.playback.playing = false;
}

/// A step of the timeline on or back.
template <int direction>
void step_clock(Frame& frame) {
  constexpr double kStep = 0.02;  // of the timeline
  seek(frame, frame.desk.playback.now + frame.desk.shown.timeline.whole() * (direction * kStep));
}

template <int row>
void at_speed(Frame& frame) {
  frame.desk.playback.speed = kSpeeds[row];
}

void to_start(Frame& frame) { seek(frame, Time{}); }
void to_end(Frame& frame) { seek(frame, frame.desk.shown.timeline.whole()); }

// ---- settings

void inch_or_metric(Frame& frame) {
  gui::ViewState view = frame.model.view();
  view.units = frame.model.units() == UnitSystem::inch ? UnitSystem::metric : UnitSystem::inch;
  frame.model.post(gui::SetView{std::move(view)});
}

void light_or_dark(Frame& frame) {
  gui::ViewState view = frame.model.view();
  view.looks = view.looks == gui::Looks::light ? gui::Looks::dark : gui::Looks::light;
  frame.model.post(gui::SetView{std::move(view)});
}

constexpr float kTextStep = 1.1F;

void larger(Frame& frame) { frame.desk.text_size = std::min(frame.desk.text_size * kTextStep, 2.5F); }
void smaller(Frame& frame) { frame.desk.text_size = std::max(frame.desk.text_size / kTextStep, 1.0F); }
void usual(Frame& frame) { frame.desk.text_size = 1.0F; }

// ---- what a menu shows grey

bool has_file(const gui::Model& model, const Desk&) { return !model.job().file.path.empty(); }
// Behind the start page a job is not changed.
bool in_sight(const gui::Model&, const Desk& desk) { return !desk.start.shown; }
bool has_undo(const gui::Model& model, const Desk& desk) {
  return in_sight(model, desk) && model.job().undo_name.has_value();
}
bool has_redo(const gui::Model& model, const Desk& desk) {
  return in_sight(model, desk) && model.job().redo_name.has_value();
}
bool one_is_chosen(const gui::Model&, const Desk& desk) { return desk.connections.canvas.selected.size() == 1; }

bool has_findings(const gui::Model&, const Desk& desk) {
  return desk.shown.plan != nullptr && !desk.shown.plan->findings.empty();
}
bool may_mend(const gui::Model& model, const Desk& desk) { return in_sight(model, desk) && has_findings(model, desk); }

constexpr CommandRow kCommands[] = {
    {Do::start_new, Menu::file, "New job", ctrl(letter('N')), start_new},
    {Do::open, Menu::file, "Open ...", ctrl(letter('O')), ask_open},
    {Do::save, Menu::file, "Save", ctrl(letter('S')), save, true},
    {Do::save_as, Menu::file, "Save as ...", ctrl_shift(letter('S')), ask_save_as},
    {Do::reload, Menu::file, words::kReload, {function_key(9)}, post<gui::Reload>, false, has_file},
    {Do::export_list, Menu::file, "Export list, plan and drawings ...", ctrl(letter('E')), ask_export, true},
    {Do::print, Menu::file, "Print list", ctrl(letter('P')), print},
    {Do::leave, Menu::file, "Quit", ctrl(letter('Q')), leave, true},

    {Do::undo, Menu::edit, "Undo", ctrl(letter('Z')), post<gui::Undo>, false, has_undo},
    {Do::redo, Menu::edit, "Redo", ctrl_shift(letter('Z')), post<gui::Redo>, false, has_redo},
    {Do::other_choices, Menu::edit, "Swap this part ...", {Key::enter}, ask_other_choices, true, one_is_chosen},
    {Do::use_this, Menu::edit, words::kKeepThisPart, {letter('U')}, use_this, false, one_is_chosen},
    {Do::remove_part, Menu::edit, "Remove this part", {Key::del}, remove_part, false, one_is_chosen},
    {Do::never_use, Menu::edit, "Exclude this part", {Key::del, false, true}, never_use, false, one_is_chosen},
    {Do::count_in_bin, Menu::edit, "In stock ...", {letter('B')}, ask_count, false, one_is_chosen},
    {Do::mend_all, Menu::edit, "Mend all that can be mended", ctrl_shift(letter('M')), mend_all, true, may_mend},
    {Do::connect, Menu::edit, "Connect two ports ...", ctrl(letter('J')), ask_connect, true, in_sight},
    {Do::add_port, Menu::edit, "Add a port ...", ctrl_shift(letter('P')), ask_port, false, in_sight},

    {Do::sheet_connections, Menu::show, words::kPlumbing, ctrl(digit(1)), show<Sheet::connections>},
    {Do::sheet_water, Menu::show, words::kFillAndDrain, ctrl(digit(2)), show<Sheet::water>},
    {Do::sheet_measurements, Menu::show, words::kMeasurements, ctrl(digit(3)), show<Sheet::measurements>},
    {Do::sheet_list, Menu::show, words::kShopping, ctrl(digit(4)), show<Sheet::list>},
    {Do::sheet_numbers, Menu::show, words::kResults, ctrl(digit(5)), show<Sheet::numbers>},
    {Do::sheet_file, Menu::show, words::kJobFile, ctrl(digit(6)), show<Sheet::file>},
    {Do::why, Menu::show, "Reasons of the verdict", {function_key(4)}, why, true},
    {Do::find, Menu::show, "Find ...", ctrl(letter('K')), find},
    {Do::menus, Menu::show, "Menus", {function_key(10)}, menus},
    {Do::fit, Menu::show, words::kZoomToFit, {letter('F')}, fit, true},
    {Do::nearer, Menu::show, words::kZoomIn, {Key::equal}, nearer},
    {Do::farther, Menu::show, words::kZoomOut, {Key::minus}, farther},
    {Do::next_part, Menu::show, "Next part", {Key::right}, walk<1>},
    {Do::part_before, Menu::show, "Part before", {Key::left}, walk<-1>},
    {Do::all_parts, Menu::show, "Select all parts", ctrl(letter('A')), select_all},

    {Do::play, Menu::water, "Play or pause", {Key::space}, play},
    {Do::step_on, Menu::water, "Forward", {Key::up}, step_clock<1>},
    {Do::step_back, Menu::water, "Back", {Key::down}, step_clock<-1>},
    {Do::to_start, Menu::water, "To the start", {Key::home}, to_start},
    {Do::to_end, Menu::water, "To the end", {Key::end}, to_end},
    {Do::speed_1, Menu::water, "As fast as the water", ctrl_shift(digit(1)), at_speed<0>, true},
    {Do::speed_10, Menu::water, "10 times as fast", ctrl_shift(digit(2)), at_speed<1>},
    {Do::speed_60, Menu::water, "60 times as fast", ctrl_shift(digit(3)), at_speed<2>},

    {Do::inch_or_metric, Menu::settings, "Inch or metric", ctrl(letter('M')), inch_or_metric},
    {Do::light_or_dark, Menu::settings, "Light or dark", ctrl(letter('L')), light_or_dark},
    {Do::larger_text, Menu::settings, "Larger text", ctrl(Key::equal), larger, true},
    {Do::smaller_text, Menu::settings, "Smaller text", ctrl(Key::minus), smaller},
    {Do::usual_text, Menu::settings, "Usual text", ctrl(digit(0)), usual},

    {Do::keys, Menu::help, "Keys", {function_key(1)}, help<HelpPage::keys>},
    {Do::glossary, Menu::help, "Glossary", {function_key(2)}, help<HelpPage::glossary>},
};

}  // namespace

std::span<const CommandRow> commands() { return kCommands; }

}  // namespace riserun::views
