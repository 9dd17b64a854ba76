#include "plan/way.h"

#include <algorithm>
#include <iterator>

namespace riserun::plan {

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
