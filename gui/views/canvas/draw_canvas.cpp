// The canvas under the hand: pan, zoom to the pointer, drag, box select.
#include "gui/views/canvas/draw_canvas.h"

#include "gui/views/canvas/canvas_paint.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);
constexpr float kWheelStep = 1.15F;  // a notch of the wheel
constexpr float kPinReach = 11.0F;   // points around a pin where a press takes hold of it

class Canvas {
 public:
  Canvas(const Scene& scene, CanvasState& state, const PixelBox& box)
      : scene_(scene), state_(state), box_(box), view_(scene.model.view()), lens_(lens()) {}

  Requests draw() {
    ImGui::SetCursorScreenPos({box_.left, box_.top});
    ImGui::InvisibleButton(
        "canvas", {std::max(1.0F, box_.width()), std::max(1.0F, box_.height())},
        ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight | ImGuiButtonFlags_MouseButtonMiddle);
    over_ = ImGui::IsItemHovered();
    if (state_.fit_wanted && box_.width() > 1.0F) fit();
    pointer_ = {ImGui::GetIO().MousePos.x, ImGui::GetIO().MousePos.y};
    pin_ = over_ ? port_at(pointer_) : nullptr;
    under_ = over_ && pin_ == nullptr ? node_at(lens_.on_canvas(pointer_)) : kNone;
    look_about();
    pull();
    take_hold();
    let_go();
    paint_all();
    ImGui::SetItemAllowOverlap();
    tell();
    if (!(view_ == scene_.model.view())) asked_.push_back(gui::SetView{view_});
    return std::move(asked_);
  }

 private:
  const Shown& shown() const { return scene_.shown; }

  Lens lens() const { return {box_.left, box_.top, view_.pan, view_.zoom, scene_.scale}; }
  void keep(const Lens& lens) {
    lens_ = lens;
    view_.pan = lens.pan;
    view_.zoom = lens.zoom;
  }
  void fit() {
    keep(fitted(lens_, state_.opening_view ? water_way() : shown().layout.all, box_));
    state_.fit_wanted = state_.opening_view = false;
  }
  /// From the reservoir to the table, as high as the canvas: large enough to be read. All, where there is no table yet.
  gui::Box water_way() const {
    gui::Box way = shown().layout.all;
    float left = way.right();
    float right = way.corner.x;
    float top = way.bottom();
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i) {
      const gui::NodeKind kind = shown().sketch.nodes[i].kind;
      if (kind != gui::NodeKind::reservoir && kind != gui::NodeKind::table) continue;
      left = std::min(left, shown().layout.nodes[i].corner.x);
      right = std::max(right, shown().layout.nodes[i].right());
      top = std::min(top, shown().layout.nodes[i].corner.y);
    }
    if (right <= left) return way;
    const float high = std::min(way.bottom() - top, (right - left) * box_.height() / box_.width());
    return {{left, top}, {right - left, high}};
  }

  std::size_t node_at(const gui::Point& spot) const {
    for (std::size_t i = shown().sketch.nodes.size(); i-- > 0;) {
      const gui::Box box = card_of(shown().sketch, shown().layout, i);
      if (spot.x >= box.corner.x && spot.x <= box.right() && spot.y >= box.corner.y && spot.y <= box.bottom()) return i;
    }
    return kNone;
  }
  // ---- a new connection, pulled from one vessel's port to another
  template <class See>
  void each_port(See see) const {
    const gui::Sketch& sketch = shown().sketch;
    for (std::size_t node = 0; node < sketch.nodes.size(); ++node)
      for (std::size_t pin = 0; pin < sketch.nodes[node].pins.size(); ++pin)
        if (!sketch.nodes[node].pins[pin].port.empty())
          see(sketch.nodes[node].pins[pin], lens_.on_screen(shown().layout.pins[node][pin].where));
  }
  const gui::Pin* port_at(const gui::Point& spot) const {
    const gui::Pin* found = nullptr;
    float nearest = std::max(scene_.px(6.0F), std::min(scene_.px(kPinReach), lens_.px(kPinReach)));
    each_port([&](const gui::Pin& pin, const gui::Point& at) {
      const float apart = std::hypot(at.x - spot.x, at.y - spot.y);
      if (apart > nearest) return;
      nearest = apart;
      found = &pin;
    });
    return found;
  }
  void pull() {
    if (!state_.pulled_from) return;
    if (ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) state_.pulled_from.reset();
    if (!state_.pulled_from || !ImGui::IsMouseReleased(ImGuiMouseButton_Left)) return;
    if (pin_ != nullptr && pin_->port != *state_.pulled_from)
      asked_.push_back(gui::Perform{gui::Connect{*state_.pulled_from, pin_->port, "", ""}});
    state_.pulled_from.reset();
  }
  /// The ports that are still free are ringed; from the pressed one a line runs to the pointer.
  void paint_pull() {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(scene_.theme[Ink::accent]);
    each_port([&](const gui::Pin& pin, const gui::Point& at) {
      if (scene_.places.wanted)
        note_place(scene_, "pin " + pin.port, {at.x - 3.0F, at.y - 3.0F, at.x + 3.0F, at.y + 3.0F});
      const bool pulled = state_.pulled_from && pin.port == *state_.pulled_from;
      if (pulled) list.AddLine({at.x, at.y}, {pointer_.x, pointer_.y}, ink, scene_.px(3.0F));
      const bool free = state_.pulled_from && (pin.spare || pulled);
      if (&pin == pin_ || free)
        list.AddCircle({at.x, at.y}, scene_.px(&pin == pin_ ? 11.0F : 8.0F), ink, 0, scene_.px(2.0F));
    });
  }

  const std::string& key_of(std::size_t node) const { return shown().sketch.nodes[node].key; }

  void look_about() {
    const ImGuiIO& io = ImGui::GetIO();
    if (over_ && io.MouseWheel != 0.0F) keep(zoomed(lens_, std::pow(kWheelStep, io.MouseWheel), pointer_));
    const bool pulls =
        ImGui::IsMouseDragging(ImGuiMouseButton_Middle) || ImGui::IsMouseDragging(ImGuiMouseButton_Right);
    if (ImGui::IsItemActive() && pulls) {
      Lens moved = lens_;
      moved.pan.x -= io.MouseDelta.x / (lens_.zoom * lens_.scale);
      moved.pan.y -= io.MouseDelta.y / (lens_.zoom * lens_.scale);
      keep(moved);
      state_.panning = true;
    }
  }

  void take_hold() {
    const ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsItemActivated() && ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
      const bool more = io.KeyShift || io.KeyCtrl;
      if (pin_ != nullptr) {
        state_.pulled_from = pin_->port;
      } else if (under_ == kNone) {
        if (!more) state_.selected.clear();
        state_.box_from = lens_.on_canvas(pointer_);
      } else if (more && state_.selected.count(key_of(under_)) > 0) {
        state_.selected.erase(key_of(under_));
      } else {
        if (!more && state_.selected.count(key_of(under_)) == 0) state_.selected.clear();
        state_.selected.insert(key_of(under_));
      }
    }
    if (!ImGui::IsItemActive() || !ImGui::IsMouseDragging(ImGuiMouseButton_Left) || state_.box_from ||
        state_.pulled_from)
      return;
    const float dx = io.MouseDelta.x / (lens_.zoom * lens_.scale);
    const float dy = io.MouseDelta.y / (lens_.zoom * lens_.scale);
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i) {
      if (state_.selected.count(key_of(i)) == 0) continue;
      const auto [place, fresh] = state_.moving.try_emplace(key_of(i), shown().layout.nodes[i].corner);
      place->second.x += dx;
      place->second.y += dy;
    }
  }

  void let_go() {
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left)) {
      if (state_.box_from) select_boxed();
      state_.box_from.reset();
      if (!state_.moving.empty()) {
        for (const auto& [key, place] : state_.moving) view_.moved[key] = place;
        state_.moving.clear();
      }
    }
    if (over_ && ImGui::IsMouseReleased(ImGuiMouseButton_Right) && !state_.panning && under_ != kNone) {
      state_.selected = {key_of(under_)};
      ImGui::OpenPopup("part menu");
    }
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Right) && !ImGui::IsMouseDown(ImGuiMouseButton_Middle))
      state_.panning = false;
    if (over_ && under_ != kNone && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left))
      asked_.push_back(Do::other_choices);
  }

  gui::Box boxed() const {
    const gui::Point a = *state_.box_from;
    const gui::Point b = lens_.on_canvas(pointer_);
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::abs(a.x - b.x), std::abs(a.y - b.y)}};
  }
  void select_boxed() {
    const gui::Box box = boxed();
    if (box.size.width < 2.0F && box.size.height < 2.0F) return;
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i)
      if (gui::overlap(box, card_of(shown().sketch, shown().layout, i))) state_.selected.insert(key_of(i));
  }

  /// Around both things that a pipe joins: its way leaves neither by more than a stub.
  gui::Box around(const gui::Link& link) const {
    const gui::Box& a = shown().layout.nodes[link.a.node];
    const gui::Box& b = shown().layout.nodes[link.b.node];
    const gui::Point corner{std::min(a.corner.x, b.corner.x), std::min(a.corner.y, b.corner.y)};
    return {corner, {std::max(a.right(), b.right()) - corner.x, std::max(a.bottom(), b.bottom()) - corner.y}};
  }

  bool in_sight(const gui::Box& box) const {
    const gui::Point a = lens_.on_screen(box.corner);
    const gui::Point b = lens_.on_screen({box.right(), box.bottom()});
    return b.x >= box_.left && a.x <= box_.right && b.y >= box_.top && a.y <= box_.bottom;
  }

  void paint_all() {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRect({box_.left, box_.top}, {box_.right, box_.bottom}, true);
    for (std::size_t i = 0; i < shown().sketch.links.size(); ++i)
      if (in_sight(around(shown().sketch.links[i]))) paint_pipe(scene_, lens_, i);
    for (std::size_t i = 0; i < shown().sketch.nodes.size(); ++i) {
      if (!in_sight(shown().layout.nodes[i])) continue;
      paint_node(scene_, lens_, i, state_.selected.count(key_of(i)) > 0, i == under_);
      if (scene_.places.wanted) note(i);
    }
    paint_pull();
    if (state_.box_from) {
      const gui::Box box = boxed();
      const gui::Point a = lens_.on_screen(box.corner);
      const gui::Point b = lens_.on_screen({box.right(), box.bottom()});
      list.AddRectFilled({a.x, a.y}, {b.x, b.y}, packed(faded(scene_.theme[Ink::accent], 0.12F)));
      list.AddRect({a.x, a.y}, {b.x, b.y}, packed(scene_.theme[Ink::accent]), 0.0F, 0, scene_.scale);
    }
    list.PopClipRect();
  }

  /// The part of the card that can be seen.
  void note(std::size_t node) {
    const gui::Box card = card_of(shown().sketch, shown().layout, node);
    const gui::Point a = lens_.on_screen(card.corner);
    const gui::Point b = lens_.on_screen({card.right(), card.bottom()});
    const PixelBox seen{std::max(a.x, box_.left), std::max(a.y, box_.top), std::min(b.x, box_.right),
                        std::min(b.y, box_.bottom)};
    if (seen.width() > 4.0F && seen.height() > 4.0F) note_place(scene_, "part " + key_of(node), seen);
  }

  /// What the catalog says of the part under the resting pointer.
  void tell() {
    if (pin_ != nullptr && (!ImGui::IsMouseDown(ImGuiMouseButton_Left) || state_.pulled_from)) {
      const std::string written = pin_->port + ", " + shown().plan->catalog->written(pin_->type);
      if (!state_.pulled_from)
        hint(scene_, written + "\npull to another port to connect the two");
      else if (*state_.pulled_from != pin_->port)
        hint(scene_, fmt::format("connect '{}' to {}", *state_.pulled_from, written));
    }
    if (under_ == kNone || ImGui::IsMouseDown(ImGuiMouseButton_Left)) return;
    const gui::Node& node = shown().sketch.nodes[under_];
    if (!node.part) return;
    const catalog::Catalog& catalog = *shown().plan->catalog;
    const catalog::Part& part = catalog.part(*node.part);
    std::string text = part.name + ", " + catalog.material(part.material).name;
    for (const catalog::Port& port : part.ports)
      text += "\n" + catalog.written(port.type) + ", bore " + write_thickness(port.bore, shown().units, 3);
    text += "\nstands " + write_pressure_alone(part.rating, shown().units) + " of water at room temperature";
    if (part.measured) text += "\nmeasured by hand";
    const std::string& source = part.source.empty() ? catalog.family(part.family).source : part.source;
    if (!source.empty()) text += "\n[" + source + "]";
    hint(scene_, text);
  }

  const Scene& scene_;
  CanvasState& state_;
  Requests asked_;
  PixelBox box_;
  gui::ViewState view_;  // as the hand leaves it
  Lens lens_;
  gui::Point pointer_;
  bool over_ = false;
  std::size_t under_ = kNone;
  const gui::Pin* pin_ = nullptr;  // the vessel's port under the pointer
};

void menu_row(Requests& asked, Do what) {
  const CommandRow& row = row_of(what);
  if (ImGui::MenuItem(row.name, keys_of(row).c_str())) asked.push_back(what);
}

}  // namespace

const gui::Node* chosen_node(const gui::Sketch& sketch, const CanvasState& canvas) {
  if (canvas.selected.size() != 1) return nullptr;
  for (const gui::Node& node : sketch.nodes)
    if (node.key == *canvas.selected.begin()) return &node;
  return nullptr;
}

Requests draw_canvas(const Scene& scene, CanvasState& state, const PixelBox& box) {
  if (scene.shown.plan == nullptr) return {};
  Requests asked = Canvas(scene, state, box).draw();
  if (!ImGui::BeginPopup("part menu")) return asked;
  for (const Do what : {Do::other_choices, Do::use_this, Do::never_use, Do::count_in_bin}) menu_row(asked, what);
  ImGui::EndPopup();
  return asked;
}

}  // namespace riserun::views
