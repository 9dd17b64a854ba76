#include "plan/way.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace riserun::plan {

double turn_between(const catalog::Part& part, std::size_t enter, std::size_t leave) {
  constexpr double kStraightOn = 180.0;
  const double between = part.ports[enter].heading_degrees - part.ports[leave].heading_degrees;
  return std::abs(std::remainder(between - kStraightOn, 2.0 * kStraightOn));
}

std::optional<Length> Way::bore() const {
  std::optional<Length> least;
  for (const WayPart& part : parts)
    if (part.bore && (!least || *part.bore < *least)) least = part.bore;
  return least;
}

std::vector<WayPart>::const_iterator last_regulator(const Catalog& catalog, const Way& way) {
  const auto is_regulator = [&](const WayPart& part) {
    return catalog.family(catalog.part(part.part).family).role == catalog::Role::regulator;
  };
  const auto last = std::find_if(way.parts.rbegin(), way.parts.rend(), is_regulator);
  return last == way.parts.rend() ? way.parts.end() : std::prev(last.base());
}

std::vector<WayPart>::const_iterator first_stage(const Catalog& catalog, const Way& way) {
  const auto last = last_regulator(catalog, way);
  if (last == way.parts.end()) return last;
  Way before = way;
  before.parts.assign(way.parts.begin(), last);
  const auto first = last_regulator(catalog, before);
  return first == before.parts.end() ? way.parts.end() : way.parts.begin() + (first - before.parts.begin());
}

const catalog::Part* first_that_stops(const Catalog& catalog, const Way& way) {
  for (const WayPart& each : way.parts) {
    const catalog::Part& part = catalog.part(each.part);
    const catalog::Family& family = catalog.family(part.family);
    if (family.can_shut || part.one_way || family.role == catalog::Role::regulator) return &part;
  }
  return nullptr;
}

bool way_is_shut_by_hand(const Catalog& catalog, const Way& way) {
  const auto shuts = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    const catalog::Family& family = catalog.family(part.family);
    return family.role == catalog::Role::device && family.can_shut && !part.one_way;
  };
  return (way.device && shuts(*way.device)) ||
         std::any_of(way.parts.begin(), way.parts.end(), [&](const WayPart& part) { return shuts(part.part); });
}

bool shuts_itself(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  return catalog.family(part.family).can_shut &&
         std::any_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& port) {
           const catalog::PortType& end = catalog.port_type(port.type);
           return end.end == catalog::End::female && catalog.kind(end.kind).female_shape == catalog::EndShape::coupler;
         });
}

bool way_is_opened_by_hand(const Catalog& catalog, const Way& way) {
  if (way.device && shuts_itself(catalog, *way.device)) return false;
  Way by_hand = way;
  std::erase_if(by_hand.parts, [&](const WayPart& part) { return shuts_itself(catalog, part.part); });
  return way_is_shut_by_hand(catalog, by_hand);
}

bool runs_one_way(const Catalog& catalog, const std::vector<Way>& ways, const std::string& connection) {
  return std::any_of(ways.begin(), ways.end(), [&](const Way& way) {
    return way.connection == connection && std::any_of(way.parts.begin(), way.parts.end(), [&](const WayPart& part) {
             return catalog.part(part.part).one_way;
           });
  });
}

bool has_a_valve(const Catalog& catalog, const std::vector<Way>& ways, const std::string& connection) {
  const auto shuts = [&](const WayPart& part) {
    const catalog::Role role = catalog.family(catalog.part(part.part).family).role;
    return role == catalog::Role::device || role == catalog::Role::check_valve;
  };
  return std::any_of(ways.begin(), ways.end(), [&](const Way& way) {
    return way.connection == connection && std::any_of(way.parts.begin(), way.parts.end(), shuts);
  });
}

}  // namespace riserun::plan
