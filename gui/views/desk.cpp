#include "gui/views/desk.h"

#include "gui/views/drawing/part_drawing.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr float kNarrow = 900.0F;  // points; below it a sheet stands alone

/// A drawing of the part that a node stands for.
Drawing drawing_of(const plan::Plan& plan, const gui::Node& node) {
  if (!node.part) return {};
  const catalog::Part& part = plan.catalog->part(*node.part);
  const std::size_t enter = node.pins.empty() ? 0 : node.pins[0].part_port;
  const std::size_t leave = node.pins.size() > 1 ? node.pins[1].part_port : enter;
  return part_drawing(*plan.catalog, part, enter, leave);
}

void lay_out_again(Frame& frame) {
  Shown& shown = frame.desk.shown;
  std::map<std::string, gui::Point> moved = frame.model.view().moved;
  for (const auto& [key, place] : frame.desk.moving) moved[key] = place;
  if (!shown.layout.nodes.empty() && moved == shown.laid_out_for) return;
  shown.layout = gui::lay_out(shown.sketch, shown.sizes, moved);
  shown.laid_out_for = std::move(moved);
}

/// How high the strip is that is read from six feet, and in which letters: lower where the screen is low.
struct Strip {
  float height;  // points
  float value;   // points down to the number
  float beside;
  ImFont* font;
  float gap;
};
Strip strip_of(const Frame& frame) {
  constexpr float kLow = 560.0F;  // points
  if (ImGui::GetMainViewport()->WorkSize.y >= frame.px(kLow)) return {58.0F, 12.0F, 44.0F, frame.fonts.large, 22.0F};
  return {47.0F, 14.0F, 33.0F, frame.fonts.strong, 14.0F};
}

void verdict(Frame& frame, const plan::Plan& plan) {
  const Ink ground = plan.status == plan::Status::ok        ? Ink::good_ground
                     : plan.status == plan::Status::caution ? Ink::caution_ground
                                                            : Ink::refused_ground;
  std::string words = verdict_of(plan.status);
  // On a low screen in two lines, so that the numbers have room beside it.
  if (const std::size_t with = words.find(" WITH");
      with != std::string::npos && strip_of(frame).font != frame.fonts.large)
    words[with] = '\n';
  ImGui::PushFont(frame.fonts.strong);
  const ImVec2 size = ImGui::CalcTextSize(words.c_str());
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float pad = frame.px(12.0F);
  const float high = frame.px(strip_of(frame).height);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled(at, {at.x + size.x + 2.0F * pad, at.y + high}, packed(frame.theme[ground]), frame.px(2.0F));
  list.AddText({at.x + pad, at.y + (high - size.y) / 2.0F}, packed(frame.theme[Ink::status_text]), words.c_str());
  ImGui::PopFont();
  ImGui::Dummy({size.x + 2.0F * pad, high});
}

/// Name, number and what must be read with it, one over the other.
void headline_figure(Frame& frame, const Figure& figure) {
  const Strip strip = strip_of(frame);
  const auto widest = [&](ImFont* font, const std::string& text) {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0F, text.c_str()).x;
  };
  const float wide = std::max({widest(frame.fonts.small, figure.label), widest(strip.font, figure.value),
                               widest(frame.fonts.small, figure.beside)});
  const float gap = frame.px(strip.gap);
  const float right = ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x;
  ImGui::SameLine(0.0F, gap);
  if (ImGui::GetCursorScreenPos().x + wide > right) ImGui::NewLine();
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool current = frame.model.plan().current;
  const auto put = [&](ImFont* font, float down, Ink ink, const std::string& text) {
    list.AddText(font, font->FontSize, {at.x, at.y + frame.px(down)},
                 packed(frame.theme[current ? ink : Ink::stale_text]), text.c_str());
  };
  put(frame.fonts.small, 0.0F, Ink::faint_text, figure.label);
  put(strip.font, strip.value, Ink::text, figure.value);
  put(frame.fonts.small, strip.beside, Ink::faint_text, figure.beside);
  ImGui::Dummy({wide, frame.px(strip.height)});
  note_item(frame, "figure " + figure.label);
  if (ImGui::IsItemHovered()) hint(frame, figure.where_from);
}

void strip(Frame& frame) {
  const plan::Plan* plan = frame.desk.shown.of;
  if (plan == nullptr) {
    ImGui::TextDisabled(frame.model.plan().working ? "Working the plan out ..." : "No plan yet.");
    return;
  }
  verdict(frame, *plan);
  for (const Figure& figure : frame.desk.shown.headline) headline_figure(frame, figure);
  for (const plan::Refusal& refusal : plan->refusals) {
    ImGui::PushStyleColor(ImGuiCol_Text, packed(frame.theme[Ink::refused]));
    ImGui::TextWrapped("%s%s%s", refusal.reason.c_str(), refusal.mend.empty() ? "" : ". Mend: ", refusal.mend.c_str());
    ImGui::PopStyleColor();
  }
}

struct Tab {
  Sheet sheet;
  const char* name;
};
constexpr Tab kTabs[] = {{Sheet::connections, "Connections"},   {Sheet::water, "Water"},
                         {Sheet::measurements, "Measurements"}, {Sheet::list, "List"},
                         {Sheet::numbers, "Numbers"},           {Sheet::file, "Job file"}};

void tabs(Frame& frame) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetContentRegionMax().x;
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {frame.px(14.0F), frame.px(7.0F)});
  for (const Tab& tab : kTabs) {
    if (&tab != kTabs) {
      ImGui::SameLine(0.0F, frame.px(2.0F));
      if (ImGui::GetCursorScreenPos().x + ImGui::CalcTextSize(tab.name).x + frame.px(28.0F) > right) ImGui::NewLine();
    }
    const bool chosen = frame.desk.sheet == tab.sheet;
    const bool wrong = tab.sheet == Sheet::file && !frame.model.job().problems.empty();
    ImGui::PushStyleColor(ImGuiCol_Button, packed(frame.theme[chosen ? Ink::accent_ground : Ink::panel]));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, packed(frame.theme[chosen ? Ink::accent_ground : Ink::field_over]));
    ImGui::PushStyleColor(ImGuiCol_Text, packed(frame.theme[chosen  ? Ink::accent_text
                                                            : wrong ? Ink::refused
                                                                    : Ink::text]));
    if (ImGui::Button(tab.name)) frame.desk.sheet = tab.sheet;
    note_item(frame, std::string("tab ") + tab.name);
    ImGui::PopStyleColor(3);
  }
  ImGui::PopStyleVar();
}

PixelBox room() {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const ImVec2 size = ImGui::GetContentRegionAvail();
  return {at.x, at.y, at.x + size.x, at.y + size.y};
}

void scrolled(Frame& frame, const char* id, ImVec2 size, void (*draw)(Frame&)) {
  ImGui::PushStyleColor(ImGuiCol_ChildBg, packed(frame.theme[Ink::panel]));
  ImGui::BeginChild(id, size, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
  ImGui::PopStyleColor();
  draw(frame);
  ImGui::EndChild();
  note_item(frame, std::string("pane ") + id);
}

void sheet_of_plan(Frame& frame) {
  const bool stale = begin_stale(frame);
  switch (frame.desk.sheet) {
    case Sheet::connections:
      draw_connections(frame);
      break;
    case Sheet::water:
      draw_water(frame);
      break;
    case Sheet::list:
      scrolled(frame, "list", {}, draw_list);
      break;
    case Sheet::numbers:
      scrolled(frame, "numbers", {}, draw_numbers);
      break;
    default:
      break;
  }
  end_stale(stale);
}

/// The measurements stand beside the sheets where there is room, so that a change and what it does are seen together.
void sheets(Frame& frame) {
  const PixelBox all = room();
  const bool beside =
      all.width() > frame.px(1500.0F) && (frame.desk.sheet == Sheet::connections || frame.desk.sheet == Sheet::water ||
                                          frame.desk.sheet == Sheet::numbers);
  const float wide = frame.px(390.0F);
  if (beside || frame.desk.sheet == Sheet::measurements) {
    scrolled(frame, "measurements", {beside ? wide : 0.0F, 0.0F}, draw_measurements);
    if (beside) ImGui::SameLine();
  }
  if (frame.desk.sheet == Sheet::measurements) return;
  ImGui::BeginChild("sheet", {}, false);
  if (frame.desk.sheet == Sheet::file)
    scrolled(frame, "file", {}, draw_job_file);
  else if (frame.desk.shown.of != nullptr)
    sheet_of_plan(frame);
  ImGui::EndChild();
}

/// The last thing that happened, and how the file stands.
void bottom_line(Frame& frame) {
  Desk& desk = frame.desk;
  for (gui::Notice& notice : frame.model.take_notices()) {
    for (const quantity::Problem& problem : notice.problems) notice.text += fmt::format("\n{}", problem.text());
    desk.notices.push_back(std::move(notice));
  }
  const gui::JobState& job = frame.model.job();
  const std::string file = (job.file.path.empty() ? std::string("not saved yet") : job.file.path.filename().string()) +
                           (job.file.unsaved ? ", changed" : "");
  if (!desk.notices.empty()) {
    const gui::Notice& last = desk.notices.back();
    ImGui::PushStyleColor(ImGuiCol_Text,
                          packed(frame.theme[last.kind == gui::Notice::Kind::refused ? Ink::refused : Ink::text]));
    ImGui::TextWrapped("%s", last.text.c_str());
    ImGui::PopStyleColor();
    ImGui::SameLine(0.0F, frame.px(20.0F));
    if (ImGui::GetContentRegionAvail().x < ImGui::CalcTextSize(file.c_str()).x) ImGui::NewLine();
  }
  ImGui::TextDisabled("%s%s", file.c_str(), frame.model.plan().working ? ", working the plan out" : "");
  if (job.file.on_disk != gui::OnDisk::changed) return;
  ImGui::SameLine();
  ImGui::TextUnformatted("The file was changed on disk.");
  ImGui::SameLine();
  if (ImGui::SmallButton("Read it again")) frame.model.reload();
  ImGui::SameLine();
  if (ImGui::SmallButton("Keep mine")) frame.model.keep_mine();
}

void offer_recovery(Frame& frame) {
  const auto& copies = frame.model.recoveries();
  for (std::size_t i = 0; i < copies.size(); ++i) {
    ImGui::PushID(static_cast<int>(i));
    ImGui::TextWrapped("'%s' was not saved when the program ended.", copies[i].name.c_str());
    ImGui::SameLine();
    const bool take = ImGui::SmallButton("Take it up again");
    ImGui::SameLine();
    const bool drop = ImGui::SmallButton("Let it go");
    ImGui::PopID();
    if (take)
      frame.model.recover(gui::Recovery(copies[i]));
    else if (drop)
      frame.model.forget(gui::Recovery(copies[i]));
    if (take || drop) return;
  }
}

/// Another job, once its own plan is there: fitted to the canvas, unless its side file says where the person left off.
void fit_what_was_opened(Frame& frame) {
  const gui::JobState& job = frame.model.job();
  if (frame.model.plan().revision != job.revision || frame.desk.shown_file == job.file.path) return;
  frame.desk.shown_file = job.file.path;
  const gui::ViewState& view = frame.model.view();
  const gui::ViewState untouched;
  if (view.pan == untouched.pan && view.zoom == untouched.zoom) frame.desk.fit_wanted = frame.desk.opening_view = true;
}

/// A job that does not load is shown where its mistakes stand.
void show_mistakes(Frame& frame) {
  const gui::JobState& job = frame.model.job();
  if (job.problems.empty() || frame.desk.problems_of == job.revision) return;
  frame.desk.problems_of = job.revision;
  frame.desk.sheet = Sheet::file;
  frame.desk.show_line = job.problems.front().line;
  frame.desk.scroll_to_line = true;
}

void keys(Frame& frame) {
  const ImGuiIO& io = ImGui::GetIO();
  if (frame.desk.ask != Ask::nothing || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId)) return;
  for (int key = static_cast<int>(Key::space); key < IM_ARRAYSIZE(io.KeysDown); ++key) {
    const bool repeats = key == static_cast<int>(Key::up) || key == static_cast<int>(Key::down);
    if (!ImGui::IsKeyPressed(key, repeats)) continue;
    const KeyPress press{static_cast<Key>(key), io.KeyCtrl, io.KeyShift};
    const bool plain = !press.ctrl && press.key < Key::f1;
    // Where there are fields, arrows, Enter and Space are theirs.
    if (plain && ImGui::GetIO().ConfigFlags & ImGuiConfigFlags_NavEnableKeyboard) continue;
    if (plain && !io.WantTextInput && press.key >= digit(1) && press.key <= digit(9))
      take_alternative(frame, static_cast<std::size_t>(key - static_cast<int>(Key::digit_0)) - 1);
    else if (const auto what = command_for(press, io.WantTextInput))
      carry_out(frame, *what);
  }
}

/// On the canvas the arrows walk along the parts; everywhere else, and in menus and questions, they move between
/// entries.
void lend_arrows(const Frame& frame) {
  const bool canvas = frame.desk.sheet == Sheet::connections || frame.desk.sheet == Sheet::water;
  const bool in_front = frame.desk.ask != Ask::nothing || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId);
  ImGuiConfigFlags& flags = ImGui::GetIO().ConfigFlags;
  if (canvas && !in_front && !ImGui::GetIO().KeyAlt)
    flags &= ~ImGuiConfigFlags_NavEnableKeyboard;
  else
    flags |= ImGuiConfigFlags_NavEnableKeyboard;
}

}  // namespace

void note_place(Frame& frame, const std::string& name, const PixelBox& box) {
  if (frame.desk.notes_places) frame.desk.places[name] = box;
}

void note_item(Frame& frame, const std::string& name) {
  if (!frame.desk.notes_places || !ImGui::IsItemVisible()) return;
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  frame.desk.places[name] = {low.x, low.y, high.x, high.y};
}

void bring_up(Frame& frame) {
  Shown& shown = frame.desk.shown;
  const plan::Plan* plan = frame.model.plan().plan.get();
  if (plan == nullptr) {
    shown = {};
    return;
  }
  const UnitSystem units = frame.model.units();
  if (frame.desk.held != frame.model.plan().plan) {
    frame.desk.held = frame.model.plan().plan;
    shown.sketch = gui::sketch_of(*plan);
    shown.drawings.clear();
    for (const gui::Node& node : shown.sketch.nodes) shown.drawings.push_back(drawing_of(*plan, node));
    shown.timeline = timeline_of(*plan);
    frame.desk.playback.now = std::min(frame.desk.playback.now, shown.timeline.whole());
    shown.layout = {};
  }
  if (shown.of != plan || shown.units != units) {
    shown.of = plan;
    shown.units = units;
    shown.headline = headline(*plan, units);
    shown.figures = figures_of(*plan, units);
    shown.plots.clear();
    for (const Quantity quantity : {Quantity::flow, Quantity::levels, Quantity::air_pressure})
      shown.plots.push_back(plot_of(*plan, shown.timeline, quantity, units));
    shown.sizes.clear();
  }
  if (shown.sizes.empty() || shown.layout.nodes.empty()) {
    shown.sizes = node_sizes(*plan, shown.sketch, frame.fonts, frame.scale);
    shown.layout = {};
  }
  lay_out_again(frame);
  fit_what_was_opened(frame);
}

void draw_connections(Frame& frame) {
  const PixelBox all = room();
  const float gap = frame.px(8.0F);
  const bool roomy = all.width() > frame.px(kNarrow) && all.height() > frame.px(420.0F);
  // Where there is little room the particulars stand below, and the sheet is rolled to them.
  const float canvas_high = roomy ? all.height() * 0.55F : std::max(frame.px(110.0F), all.height() - frame.px(30.0F));
  const PixelBox canvas{all.left, all.top, all.right, all.top + canvas_high};
  ImGui::GetWindowDrawList()->AddRectFilled({canvas.left, canvas.top}, {canvas.right, canvas.bottom},
                                            packed(frame.theme[Ink::panel]));
  frame.desk.canvas_middle = {canvas.width() / 2.0F, canvas.height() / 2.0F};
  note_place(frame, "pane canvas", canvas);
  draw_canvas(frame, canvas);
  if (!roomy) {
    ImGui::SetCursorScreenPos({all.left, canvas.bottom + gap});
    scrolled(frame, "particulars", {0.0F, frame.px(320.0F)}, draw_particulars);
    return;
  }
  const float top = canvas.bottom + gap;
  const float split = all.left + all.width() * 0.5F;
  const float clock = ImGui::GetFrameHeight() + frame.px(30.0F);
  draw_section(frame, {all.left, top, split - gap, all.bottom - clock});
  ImGui::SetCursorScreenPos({all.left, all.bottom - clock + frame.px(5.0F)});
  ImGui::BeginChild("clock", {split - gap - all.left, clock - frame.px(5.0F)}, false, ImGuiWindowFlags_NoScrollbar);
  draw_clock(frame);
  ImGui::EndChild();
  ImGui::SetCursorScreenPos({split, top});
  scrolled(frame, "particulars", {all.right - split, all.bottom - top}, draw_particulars);
}

void draw_desk(Frame& frame) {
  bring_up(frame);
  show_mistakes(frame);
  frame.desk.places.clear();
  lend_arrows(frame);
  keys(frame);
  const ImGuiIO& io = ImGui::GetIO();
  if (frame.desk.shown.of != nullptr) frame.desk.playback.advance(frame.desk.shown.timeline, seconds(io.DeltaTime));
  draw_menus(frame);
  const ImGuiViewport& viewport = *ImGui::GetMainViewport();
  ImGui::SetNextWindowPos(viewport.WorkPos);
  ImGui::SetNextWindowSize(viewport.WorkSize);
  ImGui::Begin("desk", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus);
  offer_recovery(frame);
  strip(frame);
  tabs(frame);
  const float bottom = ImGui::GetTextLineHeightWithSpacing() * 1.2F;
  ImGui::BeginChild("sheets", {0.0F, std::max(frame.px(120.0F), ImGui::GetContentRegionAvail().y - bottom)}, false);
  sheets(frame);
  ImGui::EndChild();
  bottom_line(frame);
  draw_questions(frame);
  ImGui::End();
}

}  // namespace riserun::views
