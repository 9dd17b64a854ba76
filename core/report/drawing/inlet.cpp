#include "report/drawing/inlet.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

namespace {

using plan::Place;
using plan::Plan;

constexpr double kClear = 2.0;  // halves of the line's diameter between it and the table

const plan::JobPort* water_port(const Plan& plan) {
  if (!plan.water_connection) return nullptr;
  const plan::ConnectionPlan& line = plan.connections[*plan.water_connection];
  const plan::JobPort* port = plan::port_named(plan.job.table.ports, line.to);
  return port != nullptr ? port : plan::port_named(plan.job.table.ports, line.from);
}

/// Of the axis: a pipe over the rim lies on it at the lowest.
double axis_of(const Inlet& inlet, const TableFrame& table, double half) {
  const double y = table.floor + inlet.height;
  return inlet.place == Place::over_rim ? std::max(y, table.rim + half) : std::max(y, table.floor + half);
}

double length_of(const Spot& a, const Spot& b) { return std::hypot(b.x - a.x, b.y - a.y); }

Spot towards(const Spot& from, const Spot& to, double by) {
  const double length = std::max(length_of(from, to), 1e-12);
  return {from.x + (to.x - from.x) * by / length, from.y + (to.y - from.y) * by / length};
}

}  // namespace

Inlet inlet_at(const Plan& plan, const plan::JobPort& port) {
  Inlet inlet;
  inlet.place = port.place.value_or(Place::floor);
  const Length opens = port.opens_at.value_or(Length());
  inlet.height = inlet.mouth = in_metres(opens);
  if (inlet.place != Place::over_rim) return inlet;
  const Length usual = plan.transfer.system.table.rim + plan.riser.request.pipe.bore;
  const Length crest = std::max(port.crest.value_or(usual), opens);
  inlet.height = in_metres(crest);
  inlet.mouth = in_metres(port.opens_at.value_or(crest));
  return inlet;
}

Inlet water_inlet(const Plan& plan) {
  const plan::JobPort* port = water_port(plan);
  return port == nullptr ? Inlet{} : inlet_at(plan, *port);
}

std::vector<Spot> way_outside(const Inlet& inlet, const TableFrame& table, const Spot& from, double half) {
  const double under = table.floor - table.wall - kClear * half;
  const double level = std::max(under, (from.y + table.floor - table.wall) / 2.0);
  const double wall = table.right + table.wall + kClear * half;
  const double out = wall + 3.0 * kClear * half;
  const double y = axis_of(inlet, table, half);
  return {from, {from.x, level}, {out, level}, {out, y}, {wall, y}};
}

std::vector<Spot> way_inside(const Inlet& inlet, const TableFrame& table, double half) {
  const double wall = table.right + table.wall + kClear * half;
  const double y = axis_of(inlet, table, half);
  if (inlet.place != Place::over_rim) return {{wall, y}, {table.right - half, y}};
  const double down = table.right - (1.0 + kClear) * half;
  return {{wall, y}, {down, y}, {down, std::min(table.floor + inlet.mouth, y - 2.0 * half)}};
}

std::vector<Spot> rounded(const std::vector<Spot>& way, double radius) {
  constexpr int kPieces = 6;  // of a quarter turn
  std::vector<Spot> spots;
  for (std::size_t i = 0; i < way.size(); ++i) {
    if (i == 0 || i + 1 == way.size()) {
      spots.push_back(way[i]);
      continue;
    }
    const double most = 0.5 * std::min(length_of(way[i - 1], way[i]), length_of(way[i], way[i + 1]));
    const double by = std::min(radius, most);
    const Spot begin = towards(way[i], way[i - 1], by);
    const Spot end = towards(way[i], way[i + 1], by);
    const Spot centre{begin.x + end.x - way[i].x, begin.y + end.y - way[i].y};  // of a square corner
    for (int k = 0; k <= kPieces; ++k) {
      const double angle = 0.5 * std::numbers::pi * k / kPieces;
      const double a = std::cos(angle);
      const double b = std::sin(angle);
      spots.push_back({centre.x + (begin.x - centre.x) * a + (end.x - centre.x) * b,
                       centre.y + (begin.y - centre.y) * a + (end.y - centre.y) * b});
    }
  }
  return spots;
}

std::vector<Spot> beside(const std::vector<Spot>& way, double by) {
  std::vector<Spot> edge;
  for (std::size_t i = 0; i < way.size(); ++i) {
    const Spot& before = way[i == 0 ? 0 : i - 1];
    const Spot& after = way[std::min(i + 1, way.size() - 1)];
    const double length = std::max(length_of(before, after), 1e-12);
    edge.push_back({way[i].x - (after.y - before.y) / length * by, way[i].y + (after.x - before.x) / length * by});
  }
  return edge;
}

}  // namespace riserun::report
