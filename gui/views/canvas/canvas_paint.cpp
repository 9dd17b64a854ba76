#include "gui/views/canvas/canvas_paint.h"

#include "gui/views/canvas/canvas_words.h"
#include "gui/views/scene/words.h"
#include "report/drawing/part_drawing.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

using gui::Node;
using gui::NodeKind;

constexpr float kCardHeight = 142.0F;
constexpr float kVesselWidth = 250.0F;
constexpr float kVesselHeight = 150.0F;

// Points of words at a zoom of 1.
constexpr float kSmallWords = 13.0F;
constexpr float kNameWords = 16.0F;

bool is_vessel(const Node& node) {
  return node.kind == NodeKind::reservoir || node.kind == NodeKind::table || node.kind == NodeKind::air_supply;
}

ImVec2 vec(const gui::Point& p) { return {p.x, p.y}; }

Ink fluid_of(plan::Service service) { return service == plan::Service::air ? Ink::air : Ink::water; }

/// Small wedges along the pipe's longest piece: which way the fluid goes.
void paint_flow(const Lens& lens, const std::vector<ImVec2>& way, ImU32 color) {
  std::size_t longest = 0;
  float most = 0.0F;
  for (std::size_t i = 1; i < way.size(); ++i) {
    const float length = std::hypot(way[i].x - way[i - 1].x, way[i].y - way[i - 1].y);
    if (length > most) {
      most = length;
      longest = i;
    }
  }
  if (longest == 0 || most < lens.px(14.0F)) return;
  const ImVec2 a = way[longest - 1];
  const ImVec2 b = way[longest];
  const float dx = (b.x - a.x) / most;
  const float dy = (b.y - a.y) / most;
  const float size = lens.px(3.2F);
  const ImVec2 tip{(a.x + b.x) / 2.0F + dx * size, (a.y + b.y) / 2.0F + dy * size};
  ImGui::GetWindowDrawList()->AddTriangleFilled(
      tip, {tip.x - 2.0F * dx * size - dy * size, tip.y - 2.0F * dy * size + dx * size},
      {tip.x - 2.0F * dx * size + dy * size, tip.y - 2.0F * dy * size - dx * size}, color);
}

/// A union's nut across the pipe: this joint closes the run.
void paint_nut(const Scene& scene, const Lens& lens, ImVec2 middle) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float along = lens.px(6.0F);
  const float across = lens.px(11.0F);
  const auto spot = [&](float x, float y) { return ImVec2{middle.x + x, middle.y + y}; };
  const ImVec2 outline[] = {spot(-along, -across * 0.7F), spot(-along * 0.6F, -across), spot(along * 0.6F, -across),
                            spot(along, -across * 0.7F),  spot(along, across * 0.7F),   spot(along * 0.6F, across),
                            spot(-along * 0.6F, across),  spot(-along, across * 0.7F)};
  list.AddConvexPolyFilled(outline, 8, packed(scene.theme[Ink::card]));
  list.AddPolyline(outline, 8, packed(scene.theme[Ink::part_edge]), ImDrawFlags_Closed, lens.px(1.6F));
  for (const float share : {-0.36F, 0.36F})
    list.AddLine(spot(-along, across * share), spot(along, across * share), packed(scene.theme[Ink::part_edge]),
                 lens.px(1.2F));
}

/// The margin that a part's box keeps for its joints is bridged by the pipe.
gui::PlacedPin at_card(const gui::Sketch& sketch, const gui::Layout& layout, const gui::PinAt& pin) {
  gui::PlacedPin placed = layout.pins[pin.node][pin.pin];
  if (is_vessel(sketch.nodes[pin.node])) return placed;
  placed.where.x -= placed.direction.x * kJointMargin;
  return placed;
}

/// One mark a run is enough: the first joint of the worst two metals has it.
bool bears_mark(const gui::Sketch& sketch, const gui::Link& link) {
  if (link.galvanic == catalog::GalvanicVerdict::fine) return false;
  const gui::Link* worst = nullptr;
  for (const gui::Link& other : sketch.links)
    if (other.connection == link.connection && other.galvanic != catalog::GalvanicVerdict::fine &&
        (worst == nullptr || (other.galvanic == catalog::GalvanicVerdict::keep_apart &&
                              worst->galvanic != catalog::GalvanicVerdict::keep_apart)))
      worst = &other;
  return worst == &link;
}

/// The widest of the words, which cannot be wrapped narrower.
float widest_word(const CanvasWords& words, const std::string& text) {
  float widest = 0.0F;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t to = std::min(text.find_first_of(" \n", from), text.size());
    widest = std::max(widest, words.measure(kSmallWords, text.substr(from, to - from)).x);
    from = to + 1;
  }
  return widest;
}

/// A triangle where the words have no room.
void paint_warning(const Scene& scene, const Lens& lens, ImVec2 middle, Ink ink) {
  const float size = std::max(lens.px(6.0F), scene.px(4.0F));
  ImGui::GetWindowDrawList()->AddTriangleFilled({middle.x, middle.y - size}, {middle.x + size, middle.y + size},
                                                {middle.x - size, middle.y + size}, packed(scene.theme[ink]));
}

/// What seals the joint, below the pipe, where its words have room; the mark of two metals above it.
void joint_words(const Scene& scene, const Lens& lens, const gui::Link& link, ImVec2 middle, float room) {
  const CanvasWords words(scene, lens);
  if (link.closing) paint_nut(scene, lens, middle);
  std::string text = link.seal;
  if (link.closing) text += text.empty() ? words::kMakeUpLast : std::string("\n") + words::kMakeUpLast;
  if (widest_word(words, text) <= room) {
    const ImVec2 size = words.measure(kSmallWords, text, room);
    const float top = middle.y + std::max(lens.px(link.closing ? 15.0F : 9.0F), scene.px(link.closing ? 10.0F : 6.0F));
    const float left = middle.x - size.x / 2.0F;
    words.put(kSmallWords, {left, top}, Ink::text, text, {left, top, left + size.x + 1.0F, top + size.y + 1.0F}, true);
  }
  if (!bears_mark(scene.shown.sketch, link)) return;
  const bool apart = link.galvanic == catalog::GalvanicVerdict::keep_apart;
  const Ink ground = apart ? Ink::refused_ground : Ink::caution_ground;
  const ImVec2 above{middle.x, middle.y - lens.px(6.0F) - words.line(kSmallWords) - scene.px(5.0F)};
  if (!words.plate(kSmallWords, above, Ink::status_text, ground, apart ? words::kKeepApart : words::kDissimilarMetals,
                   room + scene.px(8.0F)))
    paint_warning(scene, lens, {middle.x, middle.y - lens.px(12.0F) - scene.px(2.0F)}, ground);
}

/// What stands on a card: its name always, the drawing and the two lines under it as far as there is room.
struct CardLook {
  PixelBox inner;
  float title_top = 0.0F;
  bool drawing = false;
  int lines = 0;  // of the two: where it comes from, and over that its material
};

CardLook look_of(const Lens& lens, const CanvasWords& words, const std::string& title, const PixelBox& card) {
  const float inset = lens.px(9.0F);
  CardLook look;
  look.inner = {card.left + inset, card.top + lens.px(4.0F), card.right - inset, card.bottom - lens.px(6.0F)};
  const float name = words.measure(kNameWords, title, look.inner.width()).y;
  const float line = words.line(kSmallWords);
  const auto fits = [&](bool drawing, int lines) {
    const float top = drawing ? card.top + lens.px(kDrawingHeight + 4.0F) : look.inner.top;
    return top + name + static_cast<float>(lines) * line <= look.inner.bottom;
  };
  look.drawing = fits(true, 2);
  for (int lines = 2; lines > 0 && look.lines == 0; --lines)
    if (fits(look.drawing, lines)) look.lines = lines;
  look.title_top = look.drawing ? card.top + lens.px(kDrawingHeight + 4.0F) : look.inner.top;
  return look;
}

/// Name, then material and where it comes from, under the drawing.
void card_words(const Scene& scene, const CanvasWords& words, const CardLook& look, const plan::Plan& plan,
                const Node& node) {
  const bool stale = !scene.model.plan().current;
  const PixelBox& inner = look.inner;
  const float line = words.line(kSmallWords);
  const float under = inner.bottom - static_cast<float>(look.lines) * line;
  words.put(kNameWords, {inner.left, look.title_top}, stale ? Ink::stale_text : Ink::text, title_of(plan, node),
            {inner.left, look.title_top, inner.right, under}, true);
  if (node.part && look.lines > 1) {
    std::string material = plan.catalog->material(plan.catalog->part(*node.part).material).name;
    if (node.cut_length)
      material = fmt::format("cut {}, {}", write_length(*node.cut_length, scene.shown.units), material);
    if (node.clamps > 0) material = fmt::format("{} clamps {}", node.clamps, write_price(node.clamps_price));
    words.put(kSmallWords, {inner.left, under}, stale ? Ink::stale_text : Ink::faint_text, material,
              {inner.left, under, inner.right, under + line});
  }
  if (look.lines > 0)
    words.put(kSmallWords, {inner.left, inner.bottom - line}, node.from_bin ? Ink::text : Ink::accent,
              source_words(plan, node), {inner.left, inner.bottom - line, inner.right, inner.bottom});
}

void paint_card(const Scene& scene, const Lens& lens, std::size_t row, const gui::Box& box, bool selected,
                bool hovered) {
  const plan::Plan& plan = *scene.shown.plan;
  const Node& node = scene.shown.sketch.nodes[row];
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const gui::Point a = lens.on_screen(box.corner);
  const gui::Point b = lens.on_screen({box.right(), box.bottom()});
  const bool missing = node.kind == NodeKind::open_end;
  list.AddRectFilled(vec(a), vec(b), packed(scene.theme[node.from_bin ? Ink::card_bin : Ink::card]), lens.px(2.0F));
  const Ink edge = missing ? Ink::refused : selected ? Ink::accent : hovered ? Ink::text : Ink::line;
  list.AddRect(vec(a), vec(b), packed(scene.theme[edge]), lens.px(2.0F), 0,
               selected || missing ? scene.px(2.5F) : scene.px(1.2F));
  // A part from the bin has a cut corner, as a tag that hung on the drawer.
  if (node.from_bin)
    list.AddTriangleFilled({b.x, a.y}, {b.x - lens.px(16.0F), a.y}, {b.x, a.y + lens.px(16.0F)},
                           packed(scene.theme[Ink::accent]));
  const CanvasWords words(scene, lens);
  const CardLook look = look_of(lens, words, title_of(plan, node), {a.x, a.y, b.x, b.y});
  const Drawing& drawing = scene.shown.drawings[row];
  if (!drawing.shapes.empty() && look.drawing) {
    const float pad = lens.px(9.0F);
    const PixelBox room{a.x + pad, a.y + pad, b.x - pad, a.y + lens.px(kDrawingHeight)};
    Placement placement = fitted(drawing, room, std::max(0.6F, std::min(1.0F, lens.zoom)) * scene.scale);
    paint(drawing, placement, room, scene.theme, list);
  }
  card_words(scene, words, look, plan, node);
}

void paint_vessel_walls(const Scene& scene, const Lens& lens, const Node& node, const gui::Point& a,
                        const gui::Point& b, bool selected) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const plan::Plan& plan = *scene.shown.plan;
  list.AddRectFilled(vec(a), vec(b), packed(scene.theme[Ink::card]));
  const auto water = [&](double share) {
    if (share > 0.0)
      list.AddRectFilled({a.x, b.y - static_cast<float>(std::min(share, 1.0)) * (b.y - a.y)}, vec(b),
                         packed(scene.theme[Ink::water_pale]));
  };
  const transfer::Instant now = instant_shown(scene);
  if (node.kind == NodeKind::reservoir) water(static_cast<double>(now.reservoir_depth / plan.job.reservoir.height));
  if (node.kind == NodeKind::table && plan.levels.rim > Length{})
    water(static_cast<double>(now.table_depth / plan.levels.rim));
  const ImU32 metal = packed(scene.theme[selected ? Ink::accent : Ink::sheet_metal]);
  const float wall = std::max(scene.px(1.5F), lens.px(4.0F));
  if (node.kind == NodeKind::table) {
    const ImVec2 open[] = {vec(a), {a.x, b.y}, vec(b), {b.x, a.y}};
    list.AddPolyline(open, 4, metal, ImDrawFlags_None, wall);
  } else {
    list.AddRect(vec(a), vec(b), metal, node.kind == NodeKind::air_supply ? lens.px(22.0F) : 0.0F, 0, wall);
  }
}

std::string vessel_words(const plan::Plan& plan, const Node& node, UnitSystem units) {
  switch (node.kind) {
    case NodeKind::reservoir:
      return fmt::format("{} deep, {}", write_length(plan.levels.charge_depth, units),
                         write_volume(plan.levels.charge, units));
    case NodeKind::table:
      return fmt::format("wants {}, {}", write_length(plan.job.table.depth, units),
                         write_volume(plan.levels.need, units));
    default:
      return "set " + write_pressure_alone(plan.transfer.setting, units);
  }
}

/// The ports with their names and, where there is room, their notation, as far as they stay clear of the head.
void paint_pins(const Scene& scene, const Lens& lens, const CanvasWords& words, std::size_t row,
                const PixelBox& inner) {
  const plan::Plan& plan = *scene.shown.plan;
  const Node& node = scene.shown.sketch.nodes[row];
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float line = words.line(kSmallWords);
  for (std::size_t i = 0; i < node.pins.size(); ++i) {
    const gui::PlacedPin& pin = scene.shown.layout.pins[row][i];
    const gui::Point at = lens.on_screen(pin.where);
    const float r = lens.px(5.0F);
    list.AddRectFilled({at.x - r, at.y - r}, {at.x + r, at.y + r},
                       packed(scene.theme[node.pins[i].spare ? Ink::line : Ink::sheet_metal]));
    std::string text = fmt::format("{}  {}", node.pins[i].port, plan.catalog->written(node.pins[i].type));
    const auto& pins = scene.shown.layout.pins[row];
    // Where ports stand on both sides, their words share the width.
    const bool shares = std::any_of(pins.begin(), pins.end(), [&](const gui::PlacedPin& other) {
      return other.direction.x * pin.direction.x < 0.0F && lens.px(std::abs(other.where.y - pin.where.y)) < line;
    });
    const float most = shares ? inner.width() / 2.0F - scene.px(4.0F) : inner.width();
    if (words.measure(kSmallWords, text).x > most) text = node.pins[i].port;
    const float wide = std::min(words.measure(kSmallWords, text).x, most);
    const bool upright = std::abs(pin.direction.x) <= 0.5F;
    float x = pin.direction.x < -0.5F ? inner.left : pin.direction.x > 0.5F ? inner.right - wide : at.x - wide / 2.0F;
    x = std::clamp(x, inner.left, std::max(inner.left, inner.right - wide));
    const float y = !upright                 ? at.y - line / 2.0F
                    : pin.direction.y < 0.0F ? at.y + lens.px(8.0F)
                                             : at.y - lens.px(8.0F) - line;
    if (y < inner.top || y + line > inner.bottom + lens.px(4.0F)) continue;
    words.put(kSmallWords, {x, y}, Ink::text, text, {x, y, x + wide + 1.0F, y + line + 1.0F});
  }
}

void paint_vessel(const Scene& scene, const Lens& lens, std::size_t row, const gui::Box& box, bool selected) {
  const plan::Plan& plan = *scene.shown.plan;
  const Node& node = scene.shown.sketch.nodes[row];
  const gui::Point a = lens.on_screen(box.corner);
  const gui::Point b = lens.on_screen({box.right(), box.bottom()});
  paint_vessel_walls(scene, lens, node, a, b, selected);
  const CanvasWords words(scene, lens);
  const float inset = lens.px(10.0F);
  const PixelBox inner{a.x + inset, a.y + inset, b.x - inset, b.y - lens.px(4.0F)};
  const float title_high = words.line(kNameWords);
  words.put(kNameWords, {inner.left, inner.top}, Ink::text, title_of(plan, node), inner);
  const float second = inner.top + title_high + scene.px(2.0F);
  words.put(kSmallWords, {inner.left, second}, Ink::text, vessel_words(plan, node, scene.shown.units),
            {inner.left, second, inner.right, inner.bottom});
  paint_pins(scene, lens, words, row, {inner.left, second + words.line(kSmallWords), inner.right, inner.bottom});
}

gui::Size vessel_size(const plan::Plan& plan, const Node& node, const Fonts& fonts, float scale) {
  float widest = 0.0F;
  for (const gui::Pin& pin : node.pins) {
    const std::string text = fmt::format("{}  {}", pin.port, plan.catalog->written(pin.type));
    widest = std::max(widest, fonts.small->CalcTextSizeA(fonts.small->FontSize, FLT_MAX, 0.0F, text.c_str()).x / scale);
  }
  const float high = node.kind == NodeKind::air_supply ? 120.0F : kVesselHeight;
  // Ports stand on both sides of the reservoir, their words side by side.
  const float words = node.kind == NodeKind::reservoir ? 2.0F * widest + 60.0F : widest + 40.0F;
  return {std::max(node.kind == NodeKind::air_supply ? 190.0F : kVesselWidth, words), high};
}

}  // namespace

std::vector<gui::Size> node_sizes(const plan::Plan& plan, const gui::Sketch& sketch, const Fonts& fonts, float scale) {
  std::vector<gui::Size> sizes;
  for (const Node& node : sketch.nodes)
    sizes.push_back(is_vessel(node) ? vessel_size(plan, node, fonts, scale)
                                    : gui::Size{kCardWidth + 2.0F * kJointMargin, kCardHeight});
  return sizes;
}

gui::Box card_of(const gui::Sketch& sketch, const gui::Layout& layout, std::size_t node) {
  gui::Box box = layout.nodes[node];
  if (is_vessel(sketch.nodes[node])) return box;
  box.corner.x += kJointMargin;
  box.size.width -= 2.0F * kJointMargin;
  return box;
}

std::string title_of(const plan::Plan& plan, const Node& node) {
  switch (node.kind) {
    case NodeKind::reservoir:
      return "Reservoir";
    case NodeKind::table:
      return "Table";
    case NodeKind::air_supply:
      return "Air supply";
    case NodeKind::open_end:
      return fmt::format("No run for '{}'", gui::name_of_connection(plan, node.connection));
    default:
      return node.part ? plan.catalog->part(*node.part).name : "";
  }
}

std::string source_words(const plan::Plan& plan, const Node& node) {
  if (node.kind == NodeKind::open_end) return "choose it to see why";
  if (node.from_bin && node.bought == 0) return "in stock";
  if (!node.part) return "";
  if (node.bought == 0) return "not on the list";
  const catalog::Part& part = plan.catalog->part(*node.part);
  const char* const how = part.stocked ? "buy" : "order";
  if (node.bought == 1 && node.pieces == 1) return fmt::format("{} {}", how, write_price(node.price));
  return fmt::format("{} {}{} for {}", how, node.bought, catalog::sold_by_the_foot(part) ? " ft" : "",
                     write_price(node.price));
}

void paint_pipe(const Scene& scene, const Lens& lens, std::size_t row) {
  const Shown& shown = scene.shown;
  const gui::Link& link = shown.sketch.links[row];
  const gui::PlacedPin a = at_card(shown.sketch, shown.layout, link.a);
  const gui::PlacedPin b = at_card(shown.sketch, shown.layout, link.b);
  const int lane = is_vessel(shown.sketch.nodes[link.a.node]) ? static_cast<int>(link.a.pin) : 0;
  std::vector<ImVec2> way;
  for (const gui::Point& point : pipe_way(a, b, lane)) way.push_back(vec(lens.on_screen(point)));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const int count = static_cast<int>(way.size());
  const Ink fluid = link.joint == gui::kNoRow && link.seal.empty() ? Ink::refused : fluid_of(link.service);
  list.AddPolyline(way.data(), count, packed(scene.theme[Ink::part_edge]), ImDrawFlags_None, lens.px(9.0F));
  list.AddPolyline(way.data(), count, packed(scene.theme[fluid]), ImDrawFlags_None, lens.px(6.4F));
  if (lens.px(3.2F) > 1.0F) {
    std::vector<ImVec2> with_flow = way;
    if (link.towards_a) std::reverse(with_flow.begin(), with_flow.end());
    paint_flow(lens, with_flow, packed(scene.theme[Ink::water_text]));
  }
  if (link.joint == gui::kNoRow && link.seal.empty()) return;
  // The joint's words stand beside the part, in the middle of a straight pipe's gap.
  ImVec2 middle{(way.front().x + way.back().x) / 2.0F, way.back().y};
  float room = std::abs(way.back().x - way.front().x);
  if (way.size() > 2) {
    const bool at_b = !is_vessel(shown.sketch.nodes[link.b.node]);
    room = lens.px(2.0F * kJointMargin + 8.0F);
    const ImVec2 end = at_b ? way.back() : way.front();
    const float out = at_b ? b.direction.x : a.direction.x;
    // A branch that leaves downwards and leads to a vessel has its words beside the corner.
    middle = out != 0.0F ? ImVec2{end.x + 0.5F * out * room, end.y}
                         : ImVec2{end.x + (way.back().x < end.x ? -0.5F : 0.5F) * room, way.back().y};
  }
  joint_words(scene, lens, link, middle, std::max(room - lens.px(2.0F), lens.px(2.0F * kJointMargin)));
}

void paint_node(const Scene& scene, const Lens& lens, std::size_t row, bool selected, bool hovered) {
  const Shown& shown = scene.shown;
  const gui::Box box = card_of(shown.sketch, shown.layout, row);
  if (is_vessel(shown.sketch.nodes[row]))
    paint_vessel(scene, lens, row, box, selected);
  else
    paint_card(scene, lens, row, box, selected, hovered);
}

}  // namespace riserun::views
