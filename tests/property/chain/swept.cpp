#include "property/chain/swept.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

double pi() { return std::acos(-1.0); }

// Half of the body's width at an end, in metres.
double half_width(const Catalog& catalog, const Port& port) {
  const PortType& type = catalog.port_type(port.type);
  const double pipe = in_metres(catalog.joint_size(type)->outside_diameter);
  return type.end == End::female ? 0.7 * pipe : 0.5 * pipe;
}

}  // namespace

double swept(const Catalog& catalog, const Part& part, std::size_t about) {
  bool screwed = false;
  for (const Mate& mate : catalog.mates(part.ports[about].type))
    screwed = screwed || catalog.mating_rules()[mate.rule].turning == Turning::either;
  if (!screwed) return 0.0;
  double widest = 0.0;
  double farthest = 0.0;
  for (const Port& port : part.ports) {
    const double radius = half_width(catalog, port);
    widest = std::max(widest, radius);
    if (&port == &part.ports[about]) {
      farthest = std::max(farthest, radius);
      continue;
    }
    const double angle = (port.heading_degrees - part.ports[about].heading_degrees) * pi() / 180.0;
    for (int step = 0; step < 360; ++step) {
      const double round = step * pi() / 180.0;
      const double aside = in_metres(port.reach) * std::sin(angle) + radius * std::cos(round) * std::cos(angle);
      farthest = std::max(farthest, std::hypot(aside, radius * std::sin(round)));
    }
  }
  const double flats = in_metres(part.across_flats) > 0.0 ? in_metres(part.across_flats) : 2.0 * widest;
  return std::max(farthest, 1.1 * flats);
}

}  // namespace riserun::chain::testing
