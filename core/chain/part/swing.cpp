#include "chain/part/swing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::chain {

namespace {

using catalog::Catalog;
using catalog::End;
using catalog::Part;
using catalog::Port;

constexpr double kBandToPipe = 1.4;
constexpr double kWrenchHead = 1.1;

/// Outside radius of the body at a port.
Length end_radius(const Catalog& catalog, const Port& port) {
  const catalog::PortType& type = catalog.port_type(port.type);
  const catalog::JointSize* size = catalog.joint_size(type);
  const Length across = size ? size->outside_diameter : Length{};
  return across * (type.end == End::female ? kBandToPipe * 0.5 : 0.5);
}

bool is_screwed_by_turning(const Catalog& catalog, const Port& port) {
  const auto mates = catalog.mates(port.type);
  return std::any_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
    return catalog.mating_rules()[mate.rule].turning == catalog::Turning::either;
  });
}

/// How far the rim of the other port's end is from the axis of the port that is screwed up, at most.
Length sweep(const Port& about, const Port& other, Length radius) {
  const double turn = (other.heading_degrees - about.heading_degrees) * std::numbers::pi / 180.0;
  const double sine = std::abs(std::sin(turn));
  const double cosine = std::abs(std::cos(turn));
  const double aside = in_metres(other.reach) * sine;
  const double rim = in_metres(radius);
  // A point of the rim at the angle a to the plane of the bend is at hypot(aside + rim cosine cos a, rim sin a).
  const double flattest = rim * sine * sine;
  const double cos_a = flattest > 0.0 ? std::min(1.0, aside * cosine / flattest) : 1.0;
  return metres(std::hypot(aside + rim * cosine * cos_a, rim * std::sqrt(1.0 - cos_a * cos_a)));
}

}  // namespace

Length swing_radius(const Catalog& catalog, const Part& part, std::size_t port) {
  const Port& about = part.ports[port];
  if (!is_screwed_by_turning(catalog, about)) return {};
  Length widest = end_radius(catalog, about);
  Length farthest = widest;
  for (const Port& other : part.ports) {
    if (&other == &about) continue;
    farthest = std::max(farthest, sweep(about, other, end_radius(catalog, other)));
    widest = std::max(widest, end_radius(catalog, other));
  }
  const Length flats = part.across_flats > Length{} ? part.across_flats : widest * 2.0;
  return std::max(farthest, flats * kWrenchHead);
}

}  // namespace riserun::chain
