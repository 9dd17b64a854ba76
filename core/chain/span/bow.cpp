#include "chain/span/bow.h"

#include "chain/part/move.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::chain {

namespace {

constexpr double kRounding = 1e-3;  // micrometres
constexpr double kBoresOfBentTube = 10.0;
constexpr double kQuarterTurn = std::numbers::pi / 2.0;
// Each of four arcs turns by that where a hose is twice as long as its gap: its sine is half of it.
constexpr double kAngleOfTwice = 1.895494;

/// The least angle of which `grows` makes that much, no more than `most`.
template <class Grows>
double angle_of(double much, double most, Grows grows) {
  double low = 0.0;
  double high = most;
  for (int step = 0; step < 60; ++step) {
    const double half = (low + high) / 2.0;
    (grows(half) < much ? low : high) = half;
  }
  return high;
}

}  // namespace

double least_radius(const Catalog& catalog, const catalog::Part& part) {
  const Length bore = part.hose_bore > Length{} ? part.hose_bore : port_bore(catalog, part, 0);
  const bool is_tube = part.cut_to_length && !part.flexible;
  return (is_tube ? kBoresOfBentTube : kBoresOfBend) * static_cast<double>(in_micrometres(bore));
}

double radius_putting_on(const Catalog& catalog, const catalog::Part& part) {
  const bool goes_over = catalog.port_type(part.ports[0].type).end == catalog::End::female;
  return least_radius(catalog, part) / (part.flexible && goes_over ? 2.0 : 1.0);
}

double drawn_back(double length, double radius) {
  if (radius <= 0.0) return length;
  const double angle = std::min(length / (4.0 * radius), kQuarterTurn);
  return 4.0 * radius * (angle - std::sin(angle));
}

double least_bowed(double by, double radius) {
  return 4.0 * radius *
         angle_of(by, kQuarterTurn, [&](double angle) { return 4.0 * radius * (angle - std::sin(angle)); });
}

std::optional<HoseReach> reach_of(const Catalog& catalog, const catalog::Part& part, std::int64_t in_joints,
                                  std::int64_t aside) {
  const auto free = static_cast<double>(in_micrometres(body_length(catalog, part, 0, 1)) - in_joints);
  if (free <= 0.0) return std::nullopt;
  const double radius = least_radius(catalog, part);
  const auto y = static_cast<double>(aside);
  // Taut: two arcs of one radius for the offset, as a hose that is cut; with slack they make its length.
  const auto length = [&](double x) { return y > 0.0 ? (x * x + y * y) / y * std::atan2(y, x) : x; };
  const double taut = free / (1.0 + kSlackOfMadeUp);
  if (length(y) > taut) return std::nullopt;
  double low = y;
  double high = taut;
  for (int step = 0; step < 60; ++step) {
    const double half = (low + high) / 2.0;
    (length(half) <= taut ? low : high) = half;
  }
  const double farthest = low;
  const double angle = radius > 0.0 ? std::min(free / (4.0 * radius), kAngleOfTwice) : kAngleOfTwice;
  const double chord = free * std::sin(angle) / angle;
  const double for_radius = std::sqrt(std::max(0.0, 4.0 * y * radius - y * y));
  const double nearest = std::max({y, for_radius, std::sqrt(std::max(0.0, chord * chord - y * y))});
  if (nearest > farthest) return std::nullopt;
  return HoseReach{in_joints + static_cast<std::int64_t>(std::ceil(nearest - kRounding)),
                   in_joints + static_cast<std::int64_t>(std::floor(farthest + kRounding))};
}

}  // namespace riserun::chain
