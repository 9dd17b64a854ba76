#include "gui/views/canvas/canvas_sight.h"

#include "gui/views/canvas/paint_runs.h"
#include "gui/views/canvas/paint_vessels.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

constexpr float kPortReach = 11.0F;  // points around a port where a press takes hold of it
constexpr float kJointReach = 7.0F;  // of a joint
constexpr float kLeastReach = 3.0F;  // of pixels, or a hand does not meet it

/// Every port of a vessel, with its place on the screen.
template <class See>
void each_port(const Sight& sight, See see) {
  const Shown& shown = sight.scene.shown;
  for (std::size_t node = 0; node < shown.sketch.nodes.size(); ++node)
    for (std::size_t pin = 0; pin < shown.sketch.nodes[node].pins.size(); ++pin)
      if (!shown.sketch.nodes[node].pins[pin].port.empty())
        see(shown.sketch.nodes[node].pins[pin], sight.lens.on_screen(shown.layout.pins[node][pin].where));
}

const gui::Pin* port_at(const Sight& sight, const gui::Point& spot) {
  const gui::Pin* found = nullptr;
  float nearest = std::max(sight.scene.px(6.0F), std::min(sight.scene.px(kPortReach), sight.lens.px(kPortReach)));
  each_port(sight, [&](const gui::Pin& pin, const gui::Point& at) {
    const float apart = std::hypot(at.x - spot.x, at.y - spot.y);
    if (apart > nearest) return;
    nearest = apart;
    found = &pin;
  });
  return found;
}

/// Where two parts of a run meet, on the screen.
gui::Point place_of(const Sight& sight, const gui::Link& link) {
  return sight.lens.on_screen(sight.scene.shown.layout.pins[link.b.node][link.b.pin].where);
}

std::size_t joint_at(const Sight& sight, const gui::Point& spot) {
  const gui::Sketch& sketch = sight.scene.shown.sketch;
  std::size_t found = gui::kNoRow;
  float nearest = std::min(sight.scene.px(kJointReach), sight.lens.px(kJointReach));
  if (nearest < sight.scene.px(kLeastReach)) return found;
  for (std::size_t row = 0; row < sketch.links.size(); ++row) {
    const gui::Link& link = sketch.links[row];
    if (link.joint == gui::kNoRow || link.a.node < gui::kVessels || link.b.node < gui::kVessels) continue;
    const gui::Point at = place_of(sight, link);
    const float apart = std::hypot(at.x - spot.x, at.y - spot.y);
    if (apart > nearest) continue;
    nearest = apart;
    found = row;
  }
  return found;
}

/// The part, or its words, that lies there; else the vessel.
std::size_t node_at(const Shown& shown, const gui::Point& spot) {
  const auto within = [&](const gui::Box& box) {
    return spot.x >= box.corner.x && spot.x <= box.right() && spot.y >= box.corner.y && spot.y <= box.bottom();
  };
  for (std::size_t i = shown.sketch.nodes.size(); i-- > 0;)
    if (within(shown.layout.nodes[i]) || (shown.layout.words[i].size.width > 0.0F && within(shown.layout.words[i])))
      return i;
  return gui::kNoRow;
}

/// Around a pipe.
gui::Box around(const std::vector<gui::Point>& way) {
  gui::Box box{way.front(), {}};
  for (const gui::Point& point : way) box = gui::around(box, {point, {}});
  return box;
}

PixelBox on_screen(const Sight& sight, const gui::Box& box) {
  const gui::Point a = sight.lens.on_screen(box.corner);
  const gui::Point b = sight.lens.on_screen({box.right(), box.bottom()});
  return {a.x, a.y, b.x, b.y};
}

bool in_sight(const Sight& sight, const gui::Box& box) {
  const PixelBox seen = on_screen(sight, box);
  return seen.right >= sight.box.left && seen.left <= sight.box.right && seen.bottom >= sight.box.top &&
         seen.top <= sight.box.bottom;
}

/// Notes as much of the part as can be seen.
void note_node(const Sight& sight, std::size_t node) {
  const Shown& shown = sight.scene.shown;
  const PixelBox card = on_screen(sight, shown.layout.nodes[node]);
  const PixelBox seen{std::max(card.left, sight.box.left), std::max(card.top, sight.box.top),
                      std::min(card.right, sight.box.right), std::min(card.bottom, sight.box.bottom)};
  if (seen.width() > 4.0F && seen.height() > 4.0F)
    note_place(sight.scene, "part " + shown.sketch.nodes[node].key, seen);
}

/// Notes each joint of two parts that can be met.
void note_joints(const Sight& sight) {
  const gui::Sketch& sketch = sight.scene.shown.sketch;
  for (const gui::Link& link : sketch.links) {
    if (link.joint == gui::kNoRow || link.a.node < gui::kVessels || link.b.node < gui::kVessels) continue;
    const gui::Point at = place_of(sight, link);
    if (at.x > sight.box.left && at.x < sight.box.right && at.y > sight.box.top && at.y < sight.box.bottom)
      note_place(sight.scene,
                 fmt::format("joint {} of {}", link.joint + 1,
                             gui::name_of_connection(*sight.scene.shown.plan, link.connection)),
                 {at.x - 2.0F, at.y - 2.0F, at.x + 2.0F, at.y + 2.0F});
  }
}

/// The ports that are still free are ringed; from the pressed one a line runs to the pointer.
void paint_pull(const Sight& sight, const CanvasState& state, const Pointed& pointed) {
  const Scene& scene = sight.scene;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImU32 ink = packed(scene.theme[Ink::accent]);
  each_port(sight, [&](const gui::Pin& pin, const gui::Point& at) {
    if (scene.places.wanted) note_place(scene, "pin " + pin.port, {at.x - 3.0F, at.y - 3.0F, at.x + 3.0F, at.y + 3.0F});
    const bool pulled = state.pulled_from && pin.port == *state.pulled_from;
    if (pulled) list.AddLine({at.x, at.y}, {pointed.at.x, pointed.at.y}, ink, scene.px(3.0F));
    const bool free = state.pulled_from && (pin.spare || pulled);
    if (&pin == pointed.port || free)
      list.AddCircle({at.x, at.y}, scene.px(&pin == pointed.port ? 11.0F : 8.0F), ink, 0, scene.px(2.0F));
  });
}

void tell_port(const Sight& sight, const CanvasState& state, const gui::Pin& port) {
  const std::string written = port.port + ", " + sight.scene.shown.plan->catalog->written(port.type);
  if (!state.pulled_from)
    hint(sight.scene, written + "\npull to another port to connect the two");
  else if (*state.pulled_from != port.port)
    hint(sight.scene, fmt::format("connect '{}' to {}", *state.pulled_from, written));
}

void tell_part(const Scene& scene, const catalog::Part& part) {
  const catalog::Catalog& catalog = *scene.shown.plan->catalog;
  const UnitSystem units = scene.shown.units;
  std::string text = part.name + ", " + catalog.material(part.material).name;
  for (const catalog::Port& port : part.ports)
    text += "\n" + catalog.written(port.type) + ", bore " + write_thickness(port.bore, units, 3);
  text += "\nstands " + write_pressure_alone(part.rating, units) + " of water at room temperature";
  if (part.measured) text += "\nmeasured by hand";
  hint(scene, text);
}

}  // namespace

Pointed pointed_at(const Sight& sight, const gui::Point& pointer) {
  Pointed pointed{pointer, port_at(sight, pointer)};
  const std::size_t node = node_at(sight.scene.shown, sight.lens.on_canvas(pointer));
  // A part that stands in its port lies over it.
  if (pointed.port != nullptr && !pointed.port->spare && node != gui::kNoRow && node >= gui::kVessels)
    pointed.port = nullptr;
  if (pointed.port == nullptr) pointed.node = node;
  if (pointed.port == nullptr) pointed.link = joint_at(sight, pointer);
  return pointed;
}

gui::Box box_between(const gui::Point& from, const gui::Point& to) {
  return {{std::min(from.x, to.x), std::min(from.y, to.y)}, {std::abs(from.x - to.x), std::abs(from.y - to.y)}};
}

void paint_canvas(const Sight& sight, const CanvasState& state, const Pointed& pointed) {
  const Scene& scene = sight.scene;
  const gui::Sketch& sketch = scene.shown.sketch;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({sight.box.left, sight.box.top}, {sight.box.right, sight.box.bottom}, true);
  const gui::Layout& layout = scene.shown.layout;
  for (std::size_t vessel = 0; vessel < gui::kVessels; ++vessel)
    if (in_sight(sight, layout.nodes[vessel]))
      paint_vessel(scene, sight.lens, vessel, state.selected.count(sketch.nodes[vessel].key) > 0);
  for (std::size_t i = 0; i < sketch.links.size(); ++i)
    if (!layout.ways[i].empty() && in_sight(sight, around(layout.ways[i]))) paint_pipe(scene, sight.lens, i);
  for (std::size_t i = 0; i < layout.runs.size(); ++i)
    if (in_sight(sight, layout.runs[i].all)) paint_run(scene, sight.lens, i, state, pointed.node);
  if (scene.places.wanted)
    for (std::size_t i = 0; i < sketch.nodes.size(); ++i) note_node(sight, i);
  if (scene.places.wanted) note_joints(sight);
  paint_pull(sight, state, pointed);
  if (state.box_from) {
    const PixelBox box = on_screen(sight, box_between(*state.box_from, sight.lens.on_canvas(pointed.at)));
    list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, packed(faded(scene.theme[Ink::accent], 0.12F)));
    list.AddRect({box.left, box.top}, {box.right, box.bottom}, packed(scene.theme[Ink::accent]), 0.0F, 0, scene.scale);
  }
  list.PopClipRect();
}

void tell(const Sight& sight, const CanvasState& state, const Pointed& pointed) {
  const bool pressed = ImGui::IsMouseDown(ImGuiMouseButton_Left);
  if (pointed.port != nullptr && (!pressed || state.pulled_from)) tell_port(sight, state, *pointed.port);
  if (pointed.node == gui::kNoRow || pressed) return;
  const gui::Node& node = sight.scene.shown.sketch.nodes[pointed.node];
  if (node.part) tell_part(sight.scene, sight.scene.shown.plan->catalog->part(*node.part));
}

}  // namespace riserun::views
