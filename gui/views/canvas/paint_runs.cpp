#include "gui/views/canvas/paint_runs.h"

#include "gui/model/canvas/leader.h"
#include "gui/views/canvas/canvas_words.h"
#include "gui/views/canvas/free_room.h"
#include "gui/views/canvas/node_words.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

constexpr float kPlain = 0.35F;  // below it nothing is seen of what is inside a part
constexpr float kSection = 1.75F;
constexpr float kLargestWords = 16.0F;  // points on the screen, beside a part

ImVec2 vec(const gui::Point& p) { return {p.x, p.y}; }
Ink fluid_of(plan::Service service) { return service == plan::Service::air ? Ink::air : Ink::water; }

/// A wedge along the pipe's longest piece: which way the fluid goes.
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

/// What leads to the shop's own air is drawn as a line and bought by nobody: it is named on its longest piece.
void name_shop_line(const Scene& scene, const Lens& lens, const std::string& text, const std::vector<ImVec2>& way) {
  const CanvasWords words(scene, lens);
  const ImVec2 size = words.measure(kPartWords, text);
  const float off = lens.px(8.0F);
  std::size_t level = 0;
  std::size_t upright = 0;
  const auto length = [&](std::size_t i) {
    return i == 0 ? 0.0F : std::hypot(way[i].x - way[i - 1].x, way[i].y - way[i - 1].y);
  };
  for (std::size_t i = 1; i < way.size(); ++i) {
    std::size_t& longest = std::abs(way[i].y - way[i - 1].y) < 0.5F ? level : upright;
    if (length(i) > length(longest)) longest = i;
  }
  std::vector<ImVec2> places;
  if (length(level) >= size.x + 2.0F * off) {
    const float left = std::min(way[level].x, way[level - 1].x) + off;
    places = {{left, way[level].y - off - size.y}, {left, way[level].y + off}};
  }
  if (length(upright) >= size.y + off) {
    const float middle = (way[upright].y + way[upright - 1].y - size.y) / 2.0F;
    places.push_back({way[upright].x + off, middle});
    places.push_back({way[upright].x - off - size.x, middle});
  }
  for (const ImVec2& at : places) {
    const PixelBox room{at.x, at.y, at.x + size.x + 1.0F, at.y + size.y + 1.0F};
    if (!stands_free(scene.shown.layout, lens, room)) continue;
    words.put(kPartWords, at, Ink::faint_text, text, room);
    return;
  }
}

class RunPainter {
 public:
  RunPainter(const Scene& scene, const Lens& lens, const gui::RunBlock& block)
      : scene_(scene),
        lens_(lens),
        words_(scene, lens),
        block_(block),
        detail_(detail_at(lens.zoom)),
        text_(scene.model.plan().current ? Ink::text : Ink::stale_text),
        list_(*ImGui::GetWindowDrawList()),
        points_(detail_ == Detail::section ? kLargestWords / lens.zoom : kPartWords) {}

  void paint_all(const CanvasState& state, std::size_t hovered) {
    for (const gui::PlacedNode& node : block_.nodes)
      if (scene_.shown.sketch.nodes[node.node].kind == gui::NodeKind::open_end) gap(node);
    // Under the parts: what leads past another part goes behind it.
    if (detail_ != Detail::runs)
      for (const gui::PlacedNode& node : block_.nodes)
        if (has_words(node) && !scene_.shown.layout.in_rows)
          leader(node, state.selected.count(scene_.shown.sketch.nodes[node.node].key) > 0);
    lens_.zoom < kPlain || !has_room() ? plain() : drawn();
    for (const gui::PlacedNode& node : block_.nodes) {
      const bool selected = state.selected.count(scene_.shown.sketch.nodes[node.node].key) > 0;
      if (selected || node.node == hovered) frame(node, selected);
      if (detail_ == Detail::runs) continue;
      dot(node, selected);
      beside(node);
    }
    detail_ == Detail::runs ? folded() : title();
  }

 private:
  PixelBox on_screen(const gui::Box& box) const {
    const gui::Point a = lens_.on_screen(box.corner);
    const gui::Point b = lens_.on_screen({box.right(), box.bottom()});
    return {a.x, a.y, b.x, b.y};
  }

  void drawn() {
    const gui::Point origin = lens_.on_screen({});
    const float pixel = std::clamp(lens_.zoom, 0.6F, 1.6F) * scene_.scale;
    paint(block_.art, {origin.x, origin.y, lens_.px(1.0F), pixel}, {}, scene_.theme, list_);
  }

  /// Where the graphics card takes no more than 64 K corners at once, those of the words come after the parts'.
  bool has_room() const {
    constexpr unsigned int kMostOfParts = 40000;
    const bool any_number = (ImGui::GetIO().BackendFlags & ImGuiBackendFlags_RendererHasVtxOffset) != 0;
    return any_number || list_._VtxCurrentIdx < kMostOfParts;
  }

  /// From afar a part is a body and no more.
  void plain() {
    for (const gui::PlacedNode& node : block_.nodes) {
      if (!scene_.shown.sketch.nodes[node.node].part) continue;
      const PixelBox box = on_screen(node.box);
      list_.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, packed(scene_.theme[Ink::part_body]));
      list_.AddRect({box.left, box.top}, {box.right, box.bottom}, packed(scene_.theme[Ink::part_edge]), 0.0F, 0,
                    scene_.scale);
    }
  }

  void frame(const gui::PlacedNode& node, bool selected) {
    const PixelBox box = on_screen(node.box);
    const float out = scene_.px(3.0F);
    list_.AddRect({box.left - out, box.top - out}, {box.right + out, box.bottom + out},
                  packed(scene_.theme[selected ? Ink::accent : Ink::faint_text]), scene_.px(2.0F), 0,
                  scene_.px(selected ? 2.5F : 1.2F));
  }

  /// Nothing can be put together here.
  void gap(const gui::PlacedNode& node) {
    const PixelBox box = on_screen(node.box);
    list_.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, packed(scene_.theme[Ink::card]));
    list_.AddRect({box.left, box.top}, {box.right, box.bottom}, packed(scene_.theme[Ink::refused]), 0.0F, 0,
                  scene_.px(2.5F));
    const float pad = lens_.px(6.0F);
    const PixelBox room{box.left + pad, box.top + pad, box.right - pad, box.bottom - pad};
    words_.put(points_, {room.left, room.top}, Ink::refused,
               title_of(*scene_.shown.plan, scene_.shown.sketch.nodes[node.node]), room, true);
  }

  void leader(const gui::PlacedNode& node, bool selected) {
    const ImU32 color = packed(scene_.theme[selected ? Ink::accent : Ink::faint_text]);
    const float line = words_.line(points_);
    const gui::Point from = lens_.on_screen(gui::leader_foot(block_, node));
    const gui::Point to = leader_end(node, line);
    list_.AddLine(vec(from), vec(to), color, scene_.scale);
    if (block_.heading == gui::Heading::right)
      list_.AddLine(vec(to), {to.x + lens_.px(4.0F), to.y}, color, scene_.scale);
  }

  /// At the middle of the first line of its words; of a level run straight over or under the part.
  gui::Point leader_end(const gui::PlacedNode& node, float line) const {
    const bool left = node.words_left;
    const bool level = block_.heading == gui::Heading::right;
    const gui::Point foot = gui::leader_foot(block_, node);
    const gui::Point to = lens_.on_screen({level  ? foot.x
                                           : left ? node.words.right()
                                                  : node.words.corner.x,
                                           node.words.corner.y});
    const float out = level ? 0.0F : scene_.px(left ? -3.0F : 3.0F);
    return {to.x - out, to.y + line / 2.0F};
  }

  /// Where the line to a part's words begins, over the parts, and the line as far as it crosses its own part.
  void dot(const gui::PlacedNode& node, bool selected) {
    if (!has_words(node) || scene_.shown.layout.in_rows) return;
    const gui::Point at = lens_.on_screen(gui::leader_foot(block_, node));
    const PixelBox own = on_screen(node.box);
    const gui::Point edge = gui::leaves_box(gui::between(own.left, own.top, own.right, own.bottom), at,
                                            leader_end(node, words_.line(points_)));
    const ImU32 color = packed(scene_.theme[selected ? Ink::accent : Ink::text]);
    list_.AddCircleFilled(vec(at), scene_.px(3.5F), packed(scene_.theme[Ink::card]));
    list_.AddLine(vec(at), vec(edge), color, scene_.scale);
    list_.AddCircleFilled(vec(at), scene_.px(2.2F), color);
  }

  bool has_words(const gui::PlacedNode& node) const {
    return scene_.shown.sketch.nodes[node.node].part.has_value() && node.words.size.width > 0.0F;
  }

  /// Its words; a line leads to it.
  void beside(const gui::PlacedNode& node) {
    const gui::Node& what = scene_.shown.sketch.nodes[node.node];
    if (!has_words(node)) return;
    const PartWords& words = scene_.shown.texts.parts[node.node];
    const PixelBox room = on_screen(node.words);
    const Ink source = what.from_bin ? text_ : Ink::accent;
    if (scene_.shown.layout.in_rows) {
      words_.put(points_, {room.left, room.top}, words.mark.empty() ? text_ : Ink::caution, words.name,
                 {room.left, room.top, room.right + 1.0F, room.bottom + 2.0F});
      return;
    }
    float y = room.top;
    const auto line = [&](const std::string& text, Ink ink) {
      if (text.empty()) return;
      words_.put(points_, {room.left, y}, ink, text, {room.left, y, room.right + 1.0F, room.bottom + 2.0F});
      y += words_.measure(points_, text).y;
    };
    line(words.name, text_);
    if (!scene_.shown.layout.brief) line(words.source, source);
    line(words.mark, words.apart ? Ink::refused : Ink::caution);
    if (detail_ == Detail::section) ports(what, {room.left, y, room.right, room.bottom});
  }

  /// What the nearest look adds: the part's ends.
  void ports(const gui::Node& node, const PixelBox& room) {
    const catalog::Catalog& catalog = *scene_.shown.plan->catalog;
    std::string text;
    for (const catalog::Port& port : catalog.part(*node.part).ports)
      text += (text.empty() ? "" : ", ") + catalog.written(port.type) + " bore " +
              write_thickness(port.bore, scene_.shown.units, 3);
    const float line = words_.line(points_);
    if (room.bottom - room.top >= line) words_.put(points_, {room.left, room.top}, Ink::faint_text, text, room, true);
  }

  void title() {
    const PixelBox room = on_screen(block_.title);
    words_.put(points_, {room.left, room.top}, Ink::faint_text, scene_.shown.texts.runs[block_.connection],
               {room.left, room.top, room.right + 1.0F, room.bottom + 2.0F});
  }

  /// The run as a named line: its name and count where the words of its parts would be.
  void folded() {
    const PixelBox all = on_screen(block_.all);
    const std::string& text = scene_.shown.texts.folded[block_.connection];
    const gui::Point corner = lens_.on_screen(block_.title.corner);
    float left = corner.x;
    float top = corner.y;
    PixelBox drawn{1e9F, 1e9F, -1e9F, -1e9F};
    for (const gui::PlacedNode& node : block_.nodes) {
      const PixelBox box = on_screen(node.box);
      drawn = {std::min(drawn.left, box.left), std::min(drawn.top, box.top), std::max(drawn.right, box.right),
               std::max(drawn.bottom, box.bottom)};
    }
    const float high = words_.measure(points_, text, all.right - left).y;
    if (block_.heading == gui::Heading::right) {
      top = std::max(top, drawn.bottom + scene_.px(2.0F));
      const bool below_sight = top + high > list_.GetClipRectMax().y;
      if (below_sight && !block_.nodes.empty()) top = drawn.top - high - scene_.px(2.0F);
    } else {
      if (!block_.nodes.empty()) top = (drawn.top + drawn.bottom - high) / 2.0F;
      top = above_vessels({left, top, all.right, top + high});
      left = right_of_pipes({left, top, all.right, top + high});
    }
    const float aside = left - corner.x;
    const PixelBox room{left, top, std::max(all.right + aside, left + scene_.px(60.0F)),
                        std::max(all.bottom, top + 2.0F * words_.line(points_) + 1.0F)};
    const ImVec2 size = words_.measure(points_, text, room.right - room.left);
    const bool whole = size.x <= room.right - room.left && size.y <= room.bottom - room.top;
    words_.put(points_, {room.left, room.top}, text_, whole ? text : scene_.shown.texts.brief[block_.connection], room,
               true);
  }

  /// Where words that would stand in this box begin if the top of no vessel may run through them.
  float above_vessels(const PixelBox& box) const {
    float top = box.top;
    for (std::size_t row = 0; row < gui::kVessels; ++row) {
      const PixelBox vessel = on_screen(scene_.shown.layout.nodes[row]);
      const bool over = vessel.left < box.right && box.left < vessel.right;
      if (over && box.top < vessel.top && vessel.top < box.bottom + scene_.px(3.0F))
        top = std::min(top, vessel.top - scene_.px(3.0F) - (box.bottom - box.top));
    }
    return top;
  }

  /// Where words begin that would stand in this box, but for the pipes that lead through it.
  float right_of_pipes(const PixelBox& box) const {
    const float clear = lens_.px(6.0F) + scene_.px(4.0F);  // of a pipe's axis
    float left = box.left;
    for (const std::vector<gui::Point>& way : scene_.shown.layout.ways)
      for (std::size_t i = 1; i < way.size(); ++i) {
        const gui::Point a = lens_.on_screen(way[i - 1]);
        const gui::Point b = lens_.on_screen(way[i]);
        const bool upright = std::abs(a.x - b.x) < 1.0F;
        const bool level_with = std::min(a.y, b.y) < box.bottom && box.top < std::max(a.y, b.y);
        if (upright && level_with && a.x > box.left - clear && a.x < box.right) left = std::max(left, a.x + clear);
      }
    return left;
  }

  const Scene& scene_;
  const Lens& lens_;
  CanvasWords words_;
  const gui::RunBlock& block_;
  Detail detail_;
  Ink text_;
  ImDrawList& list_;
  float points_;  // of the words at a zoom of 1: nearest they stop growing, which makes room for more of them
};

}  // namespace

Detail detail_at(float zoom) {
  return zoom < gui::kLeastLegible - 0.001F ? Detail::runs : zoom < kSection ? Detail::parts : Detail::section;
}

void paint_pipe(const Scene& scene, const Lens& lens, std::size_t row) {
  const Shown& shown = scene.shown;
  const gui::Link& link = shown.sketch.links[row];
  std::vector<ImVec2> way;
  for (const gui::Point& point : shown.layout.ways[row]) way.push_back(vec(lens.on_screen(point)));
  if (way.size() < 2) return;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const int count = static_cast<int>(way.size());
  const Ink fluid = link.joint == gui::kNoRow && link.seal.empty() ? Ink::refused : fluid_of(link.service);
  list.AddPolyline(way.data(), count, packed(scene.theme[Ink::part_edge]), ImDrawFlags_None, lens.px(9.0F));
  for (std::size_t i = 1; i < way.size() && scene.places.wanted; ++i)
    note_place(scene, fmt::format("pipe {} {}", row, i),
               {std::min(way[i - 1].x, way[i].x) - lens.px(4.5F), std::min(way[i - 1].y, way[i].y) - lens.px(4.5F),
                std::max(way[i - 1].x, way[i].x) + lens.px(4.5F), std::max(way[i - 1].y, way[i].y) + lens.px(4.5F)});
  list.AddPolyline(way.data(), count, packed(scene.theme[fluid]), ImDrawFlags_None, lens.px(6.4F));
  for (const gui::PinAt* end : {&link.a, &link.b})
    if (end->node == gui::kAirSupply)
      name_shop_line(
          scene, lens,
          "shop's air line\n" + shown.plan->catalog->written(shown.sketch.nodes[end->node].pins[end->pin].type), way);
  if (lens.px(3.2F) <= 1.0F) return;
  if (link.towards_a) std::reverse(way.begin(), way.end());
  paint_flow(lens, way, packed(scene.theme[Ink::water_text]));
}

void paint_run(const Scene& scene, const Lens& lens, std::size_t run, const CanvasState& state, std::size_t hovered) {
  RunPainter(scene, lens, scene.shown.layout.runs[run]).paint_all(state, hovered);
}

}  // namespace riserun::views
