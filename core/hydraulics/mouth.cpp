#include "hydraulics/mouth.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

constexpr double kSurfaceTension = 0.0728;  // N/m, clean water at 20 C

}  // namespace

VolumeFlow flow_over_rim(Length bore, Length depth, double coefficient) {
  const double head = std::max(0.0, in_metres(depth));
  return cubic_metres_per_second(coefficient * std::numbers::pi * in_metres(bore) * head * std::sqrt(head));
}

Time time_over_rim(Area area, Length bore, Length upper, Length lower, double coefficient) {
  assert(metres(0.0) < lower && lower <= upper);
  return seconds(2.0 * in_square_metres(area) / (coefficient * std::numbers::pi * in_metres(bore)) *
                 (1.0 / std::sqrt(in_metres(lower)) - 1.0 / std::sqrt(in_metres(upper))));
}

Length dip_depth(VolumeFlow flow) {
  const double q = in_cubic_metres_per_second(flow);
  return metres(0.69 * std::pow(q * q / quantity::kStandardGravity, 0.2));
}

Length intake_submergence(Length bore, VolumeFlow flow) {
  const double d = in_metres(bore);
  const double velocity = in_cubic_metres_per_second(flow) / (std::numbers::pi / 4.0 * d * d);
  return metres(d * (1.0 + 2.3 * velocity / std::sqrt(quantity::kStandardGravity * d)));
}

Length jet_height(Velocity velocity) {
  const double v = in_metres_per_second(velocity);
  return metres(v * v / (2.0 * quantity::kStandardGravity));
}

Length film_left(double contact_angle_degrees, Density water) {
  const double capillary =
      std::sqrt(kSurfaceTension / (in_kilograms_per_cubic_metre(water) * quantity::kStandardGravity));
  return metres(2.0 * capillary * std::sin(contact_angle_degrees * std::numbers::pi / 360.0));
}

}  // namespace riserun::hydraulics
