// The canvas under the hand: pan, zoom to the pointer, drag, box select.
#include "gui/views/canvas/draw_canvas.h"

#include "gui/model/canvas/lay_out.h"
#include "gui/views/canvas/canvas_sight.h"
#include "gui/views/canvas/node_words.h"
#include "gui/views/scene/words.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace riserun::views {

namespace {

constexpr float kWheelStep = 1.15F;  // a notch of the wheel
constexpr const char* kPortMenu = "port menu";
constexpr const char* kJointMenu = "joint menu";
constexpr const char* kPartMenu = "part menu";
constexpr const char* kSheetMenu = "sheet menu";

/// What the hand does to the canvas, before it is painted.
class Hand {
 public:
  Hand(const Scene& scene, CanvasState& state, const PixelBox& canvas, const PixelBox& free)
      : scene_(scene),
        state_(state),
        view_(scene.model.view()),
        canvas_(canvas),
        sight_{scene, {canvas.left, canvas.top, view_.pan, view_.zoom, scene.scale}, free} {}

  Requests work() {
    const PixelBox& box = sight_.box;
    ImGui::SetCursorScreenPos({box.left, box.top});
    ImGui::InvisibleButton(
        "canvas", {std::max(1.0F, box.width()), std::max(1.0F, box.height())},
        ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight | ImGuiButtonFlags_MouseButtonMiddle);
    over_ = ImGui::IsItemHovered();
    if (state_.fit_wanted && box.width() > 1.0F) fit();
    bring_into_sight();
    pointed_.at = {ImGui::GetIO().MousePos.x, ImGui::GetIO().MousePos.y};
    if (over_) pointed_ = pointed_at(sight_, pointed_.at);
    look_about();
    pull();
    take_hold();
    let_go();
    if (!(view_ == scene_.model.view())) asked_.push_back(gui::SetView{view_});
    return std::move(asked_);
  }

  const Sight& sight() const { return sight_; }
  const Pointed& pointed() const { return pointed_; }

 private:
  const Shown& shown() const { return scene_.shown; }
  const Lens& lens() const { return sight_.lens; }

  void keep(const Lens& lens) {
    sight_.lens = lens;
    view_.pan = lens.pan;
    view_.zoom = lens.zoom;
  }
  void fit() {
    keep(fitted(lens(), shown().layout.all, canvas_));
    state_.fit_wanted = false;
  }

  /// A part that was just chosen is not left under the pane that tells of it.
  void bring_into_sight() {
    const gui::Node* node = chosen_node(shown().sketch, state_);
    const std::string key = node == nullptr ? "" : node->key;
    if (key == state_.brought) return;
    state_.brought = key;
    if (node == nullptr) return;
    const auto row = static_cast<std::size_t>(node - shown().sketch.nodes.data());
    if (row < gui::kVessels) return;
    const gui::Box all = gui::around(shown().layout.nodes[row], shown().layout.words[row]);
    const float under = lens().on_screen({all.right(), 0.0F}).x - (sight_.box.right - scene_.px(12.0F));
    if (under <= 0.0F || sight_.box.right >= canvas_.right) return;
    Lens moved = lens();
    moved.pan.x += under / (moved.zoom * moved.scale);
    keep(moved);
  }

  void pull() {
    if (!state_.pulled_from) return;
    if (ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) state_.pulled_from.reset();
    if (!state_.pulled_from || !ImGui::IsMouseReleased(ImGuiMouseButton_Left)) return;
    if (pointed_.port != nullptr && pointed_.port->port != *state_.pulled_from)
      asked_.push_back(gui::Perform{gui::Connect{*state_.pulled_from, pointed_.port->port, "", ""}});
    state_.pulled_from.reset();
  }

  const std::string& key_of(std::size_t node) const { return shown().sketch.nodes[node].key; }

  void look_about() {
    const ImGuiIO& io = ImGui::GetIO();
    if (over_ && io.MouseWheel != 0.0F)
      keep(zoomed(lens(), std::pow(kWheelStep, io.MouseWheel), pointed_.at,
                  least_zoom(lens(), shown().layout.all, canvas_)));
    const bool pulls =
        ImGui::IsMouseDragging(ImGuiMouseButton_Middle) || ImGui::IsMouseDragging(ImGuiMouseButton_Right);
    if (ImGui::IsItemActive() && pulls) {
      Lens moved = lens();
      moved.pan.x -= io.MouseDelta.x / (lens().zoom * lens().scale);
      moved.pan.y -= io.MouseDelta.y / (lens().zoom * lens().scale);
      keep(moved);
      state_.panning = true;
    }
  }

  void take_hold() {
    const ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsItemActivated() && ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
      const bool more = io.KeyShift || io.KeyCtrl;
      if (pointed_.port != nullptr) {
        state_.pulled_from = pointed_.port->port;
      } else if (pointed_.node == gui::kNoRow) {
        if (!more) state_.selected.clear();
        state_.box_from = lens().on_canvas(pointed_.at);
      } else if (more && state_.selected.count(key_of(pointed_.node)) > 0) {
        state_.selected.erase(key_of(pointed_.node));
      } else {
        if (!more && state_.selected.count(key_of(pointed_.node)) == 0) state_.selected.clear();
        state_.selected.insert(key_of(pointed_.node));
      }
    }
    if (!ImGui::IsItemActive() || !ImGui::IsMouseDragging(ImGuiMouseButton_Left) || state_.box_from ||
        state_.pulled_from)
      return;
    const float dx = io.MouseDelta.x / (lens().zoom * lens().scale);
    const float dy = io.MouseDelta.y / (lens().zoom * lens().scale);
    std::set<std::string> things;
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i)
      if (state_.selected.count(key_of(i)) > 0) things.insert(gui::moved_as(*shown().plan, shown().sketch.nodes[i]));
    things.erase("");
    for (const std::string& thing : things) {
      const auto before = view_.moved.find(thing);
      const auto [by, fresh] =
          state_.moving.try_emplace(thing, before == view_.moved.end() ? gui::Point{} : before->second);
      by->second.x += dx;
      by->second.y += dy;
    }
  }

  void let_go() {
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left)) {
      if (state_.box_from) select_boxed();
      state_.box_from.reset();
      if (!state_.moving.empty()) {
        for (const auto& [thing, by] : state_.moving) view_.moved[thing] = by;
        state_.moving.clear();
      }
    }
    if (over_ && ImGui::IsMouseReleased(ImGuiMouseButton_Right) && !state_.panning) open_menu();
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Right) && !ImGui::IsMouseDown(ImGuiMouseButton_Middle))
      state_.panning = false;
    if (over_ && pointed_.node != gui::kNoRow && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left))
      asked_.push_back(Do::other_choices);
  }

  /// Of a port, a joint, a part, or the sheet itself.
  void open_menu() {
    state_.menu_of_port = pointed_.port == nullptr ? "" : pointed_.port->port;
    state_.menu_of_joint = pointed_.link;
    const bool part = pointed_.node != gui::kNoRow && shown().sketch.nodes[pointed_.node].part.has_value();
    if (pointed_.port != nullptr) return ImGui::OpenPopup(kPortMenu);
    if (pointed_.link != gui::kNoRow) return ImGui::OpenPopup(kJointMenu);
    if (part) state_.selected = {key_of(pointed_.node)};
    ImGui::OpenPopup(part ? kPartMenu : kSheetMenu);
  }

  void select_boxed() {
    const gui::Box box = box_between(*state_.box_from, lens().on_canvas(pointed_.at));
    if (box.size.width < 2.0F && box.size.height < 2.0F) return;
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i)
      if (gui::overlap(box, shown().layout.nodes[i])) state_.selected.insert(key_of(i));
  }

  const Scene& scene_;
  CanvasState& state_;
  Requests asked_;
  gui::ViewState view_;  // as the hand leaves it
  PixelBox canvas_;
  Sight sight_;
  Pointed pointed_;
  bool over_ = false;
};

void menu_row(const Scene& scene, Requests& asked, Do what) {
  const CommandRow& row = row_of(what);
  if (ImGui::MenuItem(row.name, keys_of(row).c_str())) asked.push_back(what);
  note_item(scene, std::string("menu row ") + row.name);
}

bool has_a_run(const plan::Plan& plan, const std::string& port) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [&](const plan::ConnectionPlan& connection) {
    return connection.from == port ||
           std::find(connection.ends.begin(), connection.ends.end(), port) != connection.ends.end();
  });
}

/// What can be done with the port: a run to any other that is free of one, its measurements.
void port_menu(const Scene& scene, const std::string& port, Requests& asked) {
  if (!ImGui::BeginPopup(kPortMenu)) return;
  ImGui::TextDisabled("%s", port.c_str());
  if (ImGui::BeginMenu("Connect with")) {
    for (const gui::Node& node : scene.shown.sketch.nodes)
      for (const gui::Pin& pin : node.pins) {
        if (pin.port.empty() || pin.port == port || has_a_run(*scene.shown.plan, pin.port)) continue;
        if (ImGui::MenuItem(pin.port.c_str())) asked.push_back(gui::Perform{gui::Connect{port, pin.port, "", ""}});
        note_item(scene, "connect with " + pin.port);
      }
    ImGui::EndMenu();
  }
  note_item(scene, "menu row Connect with");
  if (ImGui::MenuItem(words::kMeasurements)) asked.push_back(ShowField{port});
  note_item(scene, std::string("menu row ") + words::kMeasurements);
  ImGui::EndPopup();
}

/// What the joint is made by, and what can be asked of its run.
void joint_menu(const Scene& scene, std::size_t row, Requests& asked) {
  const gui::Sketch& sketch = scene.shown.sketch;
  if (!ImGui::BeginPopup(kJointMenu)) return;
  if (row >= sketch.links.size()) {  // the plan has changed under the open menu
    ImGui::CloseCurrentPopup();
    return ImGui::EndPopup();
  }
  const gui::Link& link = sketch.links[row];
  const std::string connection = gui::name_of_connection(*scene.shown.plan, link.connection);
  ImGui::TextDisabled("%s", title_of_joint(*scene.shown.plan, sketch, link).c_str());
  for (const char* part : {"union", "ball valve"}) {
    const std::string title = fmt::format("Ask for a {} in this run", part);
    if (ImGui::MenuItem(title.c_str()))
      asked.push_back(gui::Perform{gui::AddWish{connection, gui::WishKind::need, part}});
    note_item(scene, "menu row " + title);
  }
  if (ImGui::MenuItem(words::kMeasurements)) asked.push_back(ShowField{connection});
  note_item(scene, std::string("menu row ") + words::kMeasurements);
  ImGui::EndPopup();
}

}  // namespace

Requests draw_canvas(const Scene& scene, CanvasState& state, const PixelBox& canvas, const PixelBox& free) {
  if (scene.shown.plan == nullptr) return {};
  Hand hand(scene, state, canvas, free);
  Requests asked = hand.work();
  paint_canvas(hand.sight(), state, hand.pointed());
  ImGui::SetItemAllowOverlap();
  tell(hand.sight(), state, hand.pointed());
  port_menu(scene, state.menu_of_port, asked);
  joint_menu(scene, state.menu_of_joint, asked);
  if (ImGui::BeginPopup(kPartMenu)) {
    for (const Do what : {Do::other_choices, Do::use_this, Do::remove_part, Do::never_use, Do::count_in_bin})
      menu_row(scene, asked, what);
    ImGui::EndPopup();
  }
  if (ImGui::BeginPopup(kSheetMenu)) {
    for (const Do what :
         {Do::connect, Do::add_port, Do::find, Do::fit, Do::nearer, Do::farther, Do::all_parts, Do::export_list})
      menu_row(scene, asked, what);
    ImGui::EndPopup();
  }
  return asked;
}

}  // namespace riserun::views
