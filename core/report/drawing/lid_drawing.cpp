#include "report/drawing/lid_drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

namespace {

using plan::LidBung;
using plan::LidMap;
using plan::LidSeam;
using plan::LidSpot;

constexpr double kBeyondBoss = 1.35;  // of its radius, that the cross of axes reaches

Spot spot_of(const LidSpot& at) { return {in_metres(at.from_left), in_metres(at.from_front)}; }

std::vector<Spot> circle(Spot middle, double radius) {
  constexpr int kCorners = 36;
  std::vector<Spot> points;
  for (int i = 0; i < kCorners; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / kCorners;
    points.push_back({middle.x + radius * std::cos(angle), middle.y + radius * std::sin(angle)});
  }
  return points;
}

std::vector<Spot> closed(std::vector<Spot> points) {
  points.push_back(points.front());
  return points;
}

void add_seams(const LidMap& map, Drawing& drawing) {
  const double half = in_metres(map.plate) / 2.0;
  const double length = in_metres(map.length);
  const double width = in_metres(map.width);
  for (const LidSeam& seam : map.seams) {
    const double at = in_metres(seam.at);
    const std::vector<Spot> outline =
        seam.across ? box_outline(at - half, 0.0, at + half, width) : box_outline(0.0, at - half, length, at + half);
    drawing.shapes.push_back(
        Stroke{seam.baffle ? "baffle" : "stay", closed(outline), Ink::part_edge, 1.0F, Line::hidden});
  }
  for (const LidSpot& tie : map.ties) {
    const Spot at = spot_of(tie);
    drawing.shapes.push_back(Stroke{"tie", closed(box_outline(at.x - half, at.y - half, at.x + half, at.y + half)),
                                    Ink::part_edge, 1.0F, Line::hidden});
  }
}

void add_bung(const LidBung& bung, std::size_t number, Drawing& drawing) {
  const Spot at = spot_of(*bung.at);
  const double boss = in_metres(bung.outside > Length{} ? bung.outside / 2.0 : bung.body);
  const double reach = boss * kBeyondBoss;
  const double aside = std::max(reach, 0.85 * in_metres(bung.turning));  // beside the boss, on the circle's edge
  drawing.shapes.push_back(Stroke{"room", closed(circle(at, in_metres(bung.turning))), Ink::line, 1.0F, Line::hidden});
  drawing.shapes.push_back(Area{bung.port, circle(at, boss), Ink::part_body, 1.0F, Ink::part_edge});
  drawing.shapes.push_back(
      Stroke{"axis", {{at.x - reach, at.y}, {at.x + reach, at.y}}, Ink::part_edge, 0.7F, Line::centre});
  drawing.shapes.push_back(
      Stroke{"axis", {{at.x, at.y - reach}, {at.x, at.y + reach}}, Ink::part_edge, 0.7F, Line::centre});
  drawing.shapes.push_back(Label{fmt::format("item {}", number),
                                 {at.x + aside, at.y + aside},
                                 fmt::format("{}", number),
                                 Ink::accent_text,
                                 Align::middle,
                                 Align::middle,
                                 Ink::accent_ground});
}

}  // namespace

bool has_lid_drawing(const plan::Plan& plan) {
  const auto& bungs = plan.lid_map.bungs;
  return std::any_of(bungs.begin(), bungs.end(), [](const LidBung& bung) { return bung.at.has_value(); });
}

Drawing lid_drawing(const plan::Plan& plan, UnitSystem units) {
  const LidMap& map = plan.lid_map;
  const double length = in_metres(map.length);
  const double width = in_metres(map.width);
  const double wall = in_metres(map.wall);
  Drawing drawing;
  drawing.shapes.push_back(Area{"walls", box_outline(-wall, -wall, length + wall, width + wall), Ink::sheet_metal});
  drawing.shapes.push_back(Area{"lid", box_outline(0.0, 0.0, length, width), Ink::panel, 1.0F, Ink::part_edge});
  add_seams(map, drawing);
  std::size_t number = 0;
  for (const LidBung& bung : map.bungs)
    if (bung.at) add_bung(bung, ++number, drawing);
  drawing.low = {-wall, -wall};
  drawing.high = {length + wall, width + wall};
  take_in_shapes(drawing);
  drawing.shapes.push_back(
      Breadth{"length", 0.0, length, -wall, false, 0, write_length(map.length, units) + " inside, front"});
  drawing.shapes.push_back(Dimension{"width", 0.0, width, -wall, Side::left, 0, write_length(map.width, units)});
  return drawing;
}

}  // namespace riserun::report
