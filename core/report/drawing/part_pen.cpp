#include "report/drawing/part_pen.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

Spot Axis::at(double along, double across) const {
  const double angle = heading * std::numbers::pi / 180.0;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {from.x + along * c - across * s, from.y + along * s + across * c};
}

void PartPen::area(const Axis& axis, std::string name, const std::vector<std::pair<double, double>>& outline, Ink fill,
                   bool edge) {
  Area area{std::move(name), {}, fill, 1.0F, edge ? std::optional(Ink::part_edge) : std::nullopt};
  for (const auto& [along, across] : outline) area.outline.push_back(axis.at(along, across));
  drawing_.shapes.push_back(std::move(area));
}

void PartPen::tube(const Axis& axis, std::string name, double from, double to, double half_from, double half_to,
                   Ink fill, bool edge) {
  area(axis, std::move(name), {{from, -half_from}, {to, -half_to}, {to, half_to}, {from, half_from}}, fill, edge);
}

void PartPen::hexagon(const Axis& axis, const std::string& name, double from, double to, double half) {
  const double cut = std::min(0.18 * half, 0.3 * (to - from));
  const double low = half - 0.6 * cut;
  area(axis, name,
       {{from, -low},
        {from + cut, -half},
        {to - cut, -half},
        {to, -low},
        {to, low},
        {to - cut, half},
        {from + cut, half},
        {from, low}});
  for (const double side : {-0.5, 0.5})
    line(axis, name, {{from + 0.3 * cut, side * half}, {to - 0.3 * cut, side * half}});
}

void PartPen::square(const Axis& axis, std::string name, double from, double to, double half) {
  tube(axis, name, from, to, half, half);
  line(axis, std::move(name), {{from, 0.0}, {to, 0.0}});
}

void PartPen::flat(const Axis& axis, const std::string& name, double from, double to, double half) {
  constexpr float kThin = 0.6F;
  tube(axis, name, from, to, half, half);
  line(axis, "diagonal", {{from, -half}, {to, half}}, Line::full, kThin);
  line(axis, "diagonal", {{from, half}, {to, -half}}, Line::full, kThin);
}

void PartPen::round(Spot middle, std::string name, double radius, Ink fill, bool edge) {
  constexpr int kSides = 32;
  Area area{std::move(name), {}, fill, 1.0F, edge ? std::optional(Ink::part_edge) : std::nullopt};
  for (int i = 0; i < kSides; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / kSides;
    area.outline.push_back({middle.x + radius * std::cos(angle), middle.y + radius * std::sin(angle)});
  }
  drawing_.shapes.push_back(std::move(area));
}

void PartPen::line(const Axis& axis, std::string name, const std::vector<std::pair<double, double>>& points, Line line,
                   float width) {
  Stroke stroke{std::move(name), {}, Ink::part_edge, width, line};
  for (const auto& [along, across] : points) stroke.points.push_back(axis.at(along, across));
  drawing_.shapes.push_back(std::move(stroke));
}

void PartPen::arrow(const Axis& axis, double from, double to, double across) {
  const double head = 0.35 * (to - from);
  line(axis, "arrow", {{from, across}, {to - head, across}}, Line::full, 1.5F);
  area(axis, "arrow", {{to - head, across - 0.45 * head}, {to, across}, {to - head, across + 0.45 * head}},
       Ink::part_edge);
}

void PartPen::spring(const Axis& axis, double from, double to, double half, Line kind) {
  constexpr int kCoils = 5;
  std::vector<std::pair<double, double>> points;
  for (int i = 0; i <= 2 * kCoils; ++i)
    points.emplace_back(from + (to - from) * i / (2.0 * kCoils), i % 2 == 0 ? -half : half);
  line(axis, "spring", points, kind);
}

}  // namespace riserun::report
