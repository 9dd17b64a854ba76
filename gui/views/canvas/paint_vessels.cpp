#include "gui/views/canvas/paint_vessels.h"

#include "gui/model/canvas/lid_places.h"
#include "gui/views/canvas/canvas_words.h"
#include "gui/views/canvas/free_room.h"
#include "gui/views/canvas/node_words.h"
#include "report/drawing/stays.h"
#include "report/words/riser_label.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace riserun::views {

namespace {

using gui::Node;
using gui::NodeKind;

PixelBox on_screen(const Lens& lens, const gui::Box& box) {
  const gui::Point a = lens.on_screen(box.corner);
  const gui::Point b = lens.on_screen({box.right(), box.bottom()});
  return {a.x, a.y, b.x, b.y};
}

/// Upright or level.
void dashed(ImDrawList& list, const ImVec2& from, const ImVec2& to, ImU32 color, float pixel, float dash = 6.0F,
            float width = 1.5F) {
  const float length = std::max(to.x - from.x, to.y - from.y);
  const bool level = to.x - from.x > to.y - from.y;
  for (float along = 0.0F; along < length; along += (dash + 0.66F * dash) * pixel) {
    const float end = std::min(along + dash * pixel, length);
    const auto at = [&](float way) { return level ? ImVec2{from.x + way, from.y} : ImVec2{from.x, from.y + way}; };
    list.AddLine(at(along), at(end), color, width * pixel);
  }
}

class VesselPainter {
 public:
  VesselPainter(const Scene& scene, const Lens& lens, std::size_t row, bool selected)
      : scene_(scene),
        lens_(lens),
        words_(scene, lens),
        node_(scene.shown.sketch.nodes[row]),
        pins_(scene.shown.layout.pins[row]),
        box_(on_screen(lens, scene.shown.layout.nodes[row])),
        metal_(packed(scene.theme[selected ? Ink::accent : Ink::sheet_metal])),
        list_(*ImGui::GetWindowDrawList()) {}

  void paint() {
    if (box_.width() <= 0.0F) return;
    switch (node_.kind) {
      case NodeKind::reservoir:
        tank();
        break;
      case NodeKind::table:
        table();
        break;
      default:
        supply();
    }
    for (std::size_t i = 0; i < pins_.size(); ++i) port(i);
  }

 private:
  const plan::Plan& plan() const { return *scene_.shown.plan; }

  /// Words in the tank, on a ground of their own: neither the water's level nor a baffle goes through them.
  void put_in_tank(float points, const ImVec2& at, Ink ink, const std::string& text, const PixelBox& room,
                   bool wraps = false) {
    if (node_.kind == NodeKind::reservoir) {
      const ImVec2 size = words_.measure(points, text, wraps ? room.width() : 0.0F);
      const float right = std::min(room.right, at.x + size.x);
      list_.AddRectFilled({at.x - scene_.px(2.0F), at.y}, {right + scene_.px(2.0F), at.y + size.y},
                          packed(scene_.theme[at.y >= water_top_ ? Ink::water_pale : Ink::card]));
    }
    words_.put(points, at, ink, text, room, wraps);
  }
  float wall() const { return std::max(scene_.px(1.5F), lens_.px(4.0F)); }

  void water(double share) {
    if (share <= 0.0) return;
    const float top = box_.bottom - static_cast<float>(std::min(share, 1.0)) * box_.height();
    water_top_ = top;
    list_.AddRectFilled({box_.left, top}, {box_.right, box_.bottom}, packed(scene_.theme[Ink::water_pale]));
    list_.AddLine({box_.left, top}, {box_.right, top}, packed(scene_.theme[Ink::water]), scene_.px(1.2F));
  }

  void tank() {
    list_.AddRectFilled({box_.left, box_.top}, {box_.right, box_.bottom}, packed(scene_.theme[Ink::card]));
    const Length height = plan().job.reservoir.height;
    if (height > Length{}) water(static_cast<double>(instant_shown(scene_).reservoir_depth / height));
    stays();
    riser();
    list_.AddRect({box_.left, box_.top}, {box_.right, box_.bottom}, metal_, 0.0F, 0, wall());
    name_beside_riser();
  }

  /// The bungs of the lid, as they stand in the picture.
  std::vector<gui::DrawnPlace> bungs_of_lid() const {
    std::vector<gui::DrawnPlace> places;
    for (std::size_t i = 0; i < pins_.size(); ++i) {
      const std::optional<float> share = gui::share_of_lid(plan(), node_.pins[i].port);
      const float drawn = (lens_.on_screen(pins_[i].where).x - box_.left) / box_.width();
      if (share && !scene_.shown.layout.in_rows) places.push_back({*share, drawn});
    }
    return places;
  }

  /// A baffle is a broken line, a post two thin lines, a bar at a wall its outline in short dashes.
  void stays() {
    const std::vector<gui::DrawnPlace> bungs = bungs_of_lid();
    const auto at = [&](double x, double y) {
      const auto share = [](double of, Length all) { return static_cast<float>(of / std::max(in_metres(all), 1e-6)); };
      return ImVec2{box_.left + box_.width() * gui::drawn_between(bungs, share(x, plan().job.reservoir.length)),
                    box_.bottom - box_.height() * share(y, plan().job.reservoir.height)};
    };
    const ImU32 color = packed(scene_.theme[Ink::line]);
    for (const report::StayInSight& stay : report::stays_in_sight(plan())) {
      ImVec2 high = at(stay.left, stay.top);
      ImVec2 low = at(stay.right, stay.bottom);
      if (stay.kind == report::StayKind::baffle) {
        dashed(list_, high, {high.x, low.y}, color, scene_.scale);
        continue;
      }
      // However thin: its two sides are told apart.
      const float least = scene_.px(3.0F);
      if (low.x - high.x < least) low.x = high.x + least;
      if (low.y - high.y < least) high.y = low.y - least;
      for (const float x : {high.x, low.x})
        if (stay.kind == report::StayKind::bar)
          dashed(list_, {x, high.y}, {x, low.y}, color, scene_.scale, 3.0F, 1.0F);
        else
          list_.AddLine({x, high.y}, {x, low.y}, color, scene_.px(1.0F));
      if (stay.kind == report::StayKind::bar)
        for (const float y : {high.y, low.y}) dashed(list_, {high.x, y}, {low.x, y}, color, scene_.scale, 3.0F, 1.0F);
    }
  }

  /// On the floor, on the wider side of the riser.
  void name_beside_riser() {
    float left = box_.left;
    float right = box_.right;
    const float half = lens_.px(gui::half_of_riser(plan(), scene_.shown.layout));
    for (std::size_t i = 0; i < pins_.size(); ++i) {
      if (node_.pins[i].port != plan().riser.bung) continue;
      const float x = lens_.on_screen(pins_[i].where).x;
      if (x - box_.left > box_.right - x)
        right = x - half;
      else
        left = x + half;
    }
    if (plan().riser.bung.empty()) left = assumed_place() + half;
    const std::string text = vessel_words(plan(), node_, scene_.shown.units);
    const PixelBox wide{left + lens_.px(12.0F), box_.top, right - lens_.px(12.0F), box_.bottom - lens_.px(5.0F)};
    const float top = wide.bottom - words_.measure(kVesselWords, text, wide.width()).y;
    if (top > box_.top)
      put_in_tank(kVesselWords, {wide.left, top}, Ink::text, text, {wide.left, top, wide.right, box_.bottom}, true);
  }

  /// From its bung down into the water, short of the floor.
  void riser() {
    const double height = in_metres(plan().job.reservoir.height);
    if (plan().riser.bung.empty()) return assumed_riser();
    for (std::size_t i = 0; i < pins_.size(); ++i) {
      if (node_.pins[i].port != plan().riser.bung || height <= 0.0) continue;
      const float x = lens_.on_screen(pins_[i].where).x;
      const float short_of = static_cast<float>(in_metres(plan().riser.riser.end_height) / height) * box_.height();
      const float end = box_.bottom - std::max(short_of, scene_.px(4.0F));
      const float half = lens_.px(gui::half_of_riser(plan(), scene_.shown.layout));
      list_.AddRectFilled({x - half, box_.top}, {x + half, end}, packed(scene_.theme[Ink::part_body]));
      const transfer::Instant now = instant_shown(scene_);
      if (now.table_depth > Length{})
        list_.AddRectFilled({x - 0.6F * half, box_.top}, {x + 0.6F * half, end}, packed(scene_.theme[Ink::water]));
      for (const float side : {-half, half})
        list_.AddLine({x + side, box_.top}, {x + side, end}, packed(scene_.theme[Ink::part_edge]), scene_.px(1.5F));
      const std::string text = plan().riser.size + " " + report::riser_label(plan(), scene_.shown.units);
      const float line = words_.line(kVesselWords);
      const float top = (box_.top + box_.bottom) / 2.0F - line / 2.0F;
      const PixelBox room{x + half + lens_.px(7.0F), top, box_.right - lens_.px(8.0F), top + line + 1.0F};
      if (top > box_.top + lens_.px(12.0F) + 2.0F * line && room.bottom < box_.bottom - lens_.px(12.0F) - line)
        put_in_tank(kVesselWords, {room.left, room.top}, Ink::text, text, room);
    }
  }

  /// Where the job tells of no port for it: in broken lines up to the table, as near to the middle as the runs leave
  /// room.
  void assumed_riser() {
    const float top = lens_.on_screen({0.0F, scene_.shown.layout.nodes[gui::kTable].bottom()}).y;
    const float half = gui::half_of_riser(plan(), scene_.shown.layout);
    const float x = assumed_place();
    for (const float side : {-half, half})
      dashed(list_, {x + lens_.px(side), top}, {x + lens_.px(side), box_.bottom - lens_.px(8.0F)},
             packed(scene_.theme[Ink::part_edge]), scene_.scale);
    const std::string text = "water line assumed: no port is given for it";
    const float line = words_.line(kVesselWords);
    const float wide = words_.measure(kVesselWords, text).x;
    const float off = lens_.px(half + 9.0F);
    for (const float left : {x + off, x - off - wide})
      for (const float share : {0.5F, 0.25F, 0.1F, 0.75F}) {
        const float y = top + share * (box_.top - top - line);
        const PixelBox room{left, y, left + wide + 1.0F, y + line + 1.0F};
        if (!stands_free(scene_.shown.layout, lens_, room)) continue;
        words_.put(kVesselWords, {left, y}, Ink::faint_text, text, room);
        return;
      }
  }

  float assumed_place() const {
    const float top = lens_.on_screen({0.0F, scene_.shown.layout.nodes[gui::kTable].bottom()}).y;
    const float half = lens_.px(gui::half_of_riser(plan(), scene_.shown.layout));
    const float middle = (box_.left + box_.right) / 2.0F;
    const float most = (box_.right - box_.left) / 2.0F - 2.0F * half;
    for (float aside = 0.0F; aside < most; aside += half)
      for (const float x : {middle + aside, middle - aside})
        if (stands_free(scene_.shown.layout, lens_, {x - 1.5F * half, top + 1.0F, x + 1.5F * half, box_.top})) return x;
    return middle;
  }

  void table() {
    list_.AddRectFilled({box_.left, box_.top}, {box_.right, box_.bottom}, packed(scene_.theme[Ink::card]));
    if (plan().levels.rim > Length{}) water(static_cast<double>(instant_shown(scene_).table_depth / plan().levels.rim));
    const ImVec2 open[] = {
        {box_.left, box_.top}, {box_.left, box_.bottom}, {box_.right, box_.bottom}, {box_.right, box_.top}};
    list_.AddPolyline(open, 4, metal_, ImDrawFlags_None, wall());
    for (const auto& [pin, pipe] : scene_.shown.layout.over_rim) pipe_over_rim(pipe);
    const PixelBox room{box_.left + lens_.px(12.0F), box_.top + lens_.px(3.0F), box_.right - lens_.px(12.0F),
                        box_.bottom};
    words_.put(kVesselWords, {room.left, room.top}, Ink::text, vessel_words(plan(), node_, scene_.shown.units), room,
               true);
  }

  void pipe_over_rim(const std::vector<gui::Point>& pipe) {
    std::vector<ImVec2> way;
    for (const gui::Point& point : pipe) {
      const gui::Point at = lens_.on_screen(point);
      way.push_back({at.x, at.y});
    }
    const int count = static_cast<int>(way.size());
    list_.AddPolyline(way.data(), count, packed(scene_.theme[Ink::part_edge]), ImDrawFlags_None, lens_.px(9.0F));
    list_.AddPolyline(way.data(), count, packed(scene_.theme[Ink::part_body]), ImDrawFlags_None, lens_.px(6.4F));
  }

  /// The receiver on its feet.
  void supply() {
    const float foot = lens_.px(8.0F);
    for (const float share : {0.2F, 0.8F}) {
      const float x = box_.left + share * box_.width();
      list_.AddRectFilled({x - foot, box_.bottom - 2.0F * foot}, {x + foot, box_.bottom}, metal_);
    }
    const float bottom = box_.bottom - foot;
    list_.AddRectFilled({box_.left, box_.top}, {box_.right, bottom}, packed(scene_.theme[Ink::card]), lens_.px(24.0F));
    list_.AddRect({box_.left, box_.top}, {box_.right, bottom}, metal_, lens_.px(24.0F), 0, wall());
    const PixelBox room{box_.left + lens_.px(10.0F),
                        box_.top + lens_.px(9.0F) + 2.0F * words_.line(kPartWords) + scene_.px(4.0F),
                        box_.right - lens_.px(6.0F), bottom};
    words_.put(kVesselWords, {room.left, room.top}, Ink::text, vessel_words(plan(), node_, scene_.shown.units), room,
               true);
  }

  /// The bung, and its name inside the vessel where it has room.
  void port(std::size_t i) {
    const gui::PlacedPin& pin = pins_[i];
    const gui::Point at = lens_.on_screen(pin.where);
    const float across = lens_.px(gui::half_of_bung(plan(), scene_.shown.layout, node_.pins[i].port));
    const float out = lens_.px(scene_.shown.layout.in_rows ? 4.0F : 9.0F);
    const bool level = std::abs(pin.direction.x) > 0.5F;
    const ImVec2 half = level ? ImVec2{out, across} : ImVec2{across, out};
    const Ink fill = node_.pins[i].spare ? Ink::line : Ink::part_body;
    list_.AddRectFilled({at.x - half.x, at.y - half.y}, {at.x + half.x, at.y + half.y}, packed(scene_.theme[fill]));
    list_.AddRect({at.x - half.x, at.y - half.y}, {at.x + half.x, at.y + half.y}, packed(scene_.theme[Ink::part_edge]),
                  0.0F, 0, scene_.px(1.0F));
    thread_in_bung(at, half, level);
    if (scene_.shown.layout.in_rows) return;  // each run's title tells its port
    const std::string written = plan().catalog->written(node_.pins[i].type);
    const float line = words_.line(kPartWords);
    if (level) {
      const std::string text = node_.pins[i].port + " " + written;
      const float wide = words_.measure(kPartWords, text).x;
      const auto over = scene_.shown.layout.over_rim.find(i);
      const bool over_rim = node_.kind == NodeKind::table && over != scene_.shown.layout.over_rim.end();
      // Of a pipe over the rim beside the leg that hangs into the table.
      const float right = over_rim ? lens_.on_screen(over->second.back()).x - lens_.px(8.0F) : at.x - half.x;
      const float middle = over_rim ? (box_.top + box_.bottom) / 2.0F : at.y;
      const PixelBox room{right - scene_.px(4.0F) - wide, middle - line / 2.0F, right, middle + line};
      if (room.left > box_.left + lens_.px(20.0F))
        put_in_tank(kPartWords, {room.left, room.top}, Ink::text, text, room);
      return;
    }
    const float right = room_beside(i);
    const float name_top = node_.kind == NodeKind::table ? at.y - half.y - line : at.y + wall();
    const float left = std::max(at.x + half.x, part_edge(at.x, name_top, name_top + 2.0F * line)) + scene_.px(3.0F);
    if (right - left < scene_.px(44.0F)) return;
    if (node_.kind == NodeKind::air_supply && right - left < words_.measure(kPartWords, node_.pins[i].port).x) return;
    if (node_.kind == NodeKind::table) {
      const float top = name_top;
      if (top < box_.top + lens_.px(3.0F) + words_.line(kVesselWords)) return;
      words_.put(kPartWords, {left, top}, Ink::text, node_.pins[i].port + " " + written,
                 {left, top, right, top + line + 1.0F});
    } else {
      const float top = name_top;
      put_in_tank(kPartWords, {left, top}, Ink::text, node_.pins[i].port, {left, top, right, top + line + 1.0F});
      put_in_tank(kPartWords, {left, top + line}, Ink::faint_text, written,
                  {left, top + line, right, top + 2.0F * line + 1.0F});
    }
  }

  /// Its thread from end to end, hidden.
  void thread_in_bung(const gui::Point& at, const ImVec2& half, bool level) {
    const ImVec2 root = level ? ImVec2{0.0F, 0.78F * half.y} : ImVec2{0.78F * half.x, 0.0F};
    const ImVec2 along = level ? ImVec2{half.x, 0.0F} : ImVec2{0.0F, half.y};
    for (const float side : {-1.0F, 1.0F}) {
      const ImVec2 middle{at.x + side * root.x, at.y + side * root.y};
      dashed(list_, {middle.x - along.x, middle.y - along.y}, {middle.x + along.x, middle.y + along.y},
             packed(scene_.theme[Ink::part_edge]), scene_.scale, 3.0F, 1.0F);
    }
  }

  /// How far to the right of the port the parts reach that stand in it, at the height of its name.
  float part_edge(float x, float top, float bottom) const {
    float edge = x;
    const std::vector<gui::Box>& boxes = scene_.shown.layout.nodes;
    for (std::size_t row = gui::kVessels; row < boxes.size(); ++row) {
      const PixelBox part = on_screen(lens_, boxes[row]);
      if (part.left < x && x < part.right && part.top < bottom && top < part.bottom) edge = std::max(edge, part.right);
    }
    return edge;
  }

  /// Up to the next port of the same edge, or the wall.
  float room_beside(std::size_t i) const {
    float right = box_.right - lens_.px(6.0F);
    for (const gui::PlacedPin& other : pins_) {
      const float x = lens_.on_screen(other.where).x;
      if (std::abs(other.direction.x) < 0.5F && other.where.x > pins_[i].where.x)
        right = std::min(right, x - lens_.px(14.0F));
    }
    return right;
  }

  const Scene& scene_;
  const Lens& lens_;
  CanvasWords words_;
  const Node& node_;
  const std::vector<gui::PlacedPin>& pins_;
  PixelBox box_;
  float water_top_ = 1e9F;  // in the tank
  ImU32 metal_;
  ImDrawList& list_;
};

}  // namespace

void paint_vessel(const Scene& scene, const Lens& lens, std::size_t node, bool selected) {
  VesselPainter(scene, lens, node, selected).paint();
}

}  // namespace riserun::views
