#include "plan/stage/instead.h"

#include "chain/finder.h"
#include "plan/stage/inputs.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// A chain lets the other part in the place of each such part and plug of its own.
bool chain_lets(const Catalog& catalog, const ConnectionPlan& connection, PartId part, PartId other) {
  const auto allows = [&](const chain::PlacedPart& placed) -> bool {
    return chain::allowed_parts(catalog, connection.request, {placed}).front();
  };
  const std::vector<chain::RunPart>& parts = connection.chain()->parts;
  for (std::size_t row = 0; row < parts.size(); ++row) {
    const std::vector<chain::Follower> plugs = parts[row].plugs();
    const bool plugged =
        std::any_of(plugs.begin(), plugs.end(), [&](const chain::Follower& plug) { return plug.plug == part; });
    if (plugged && !allows({other, 0, 0})) return false;
    if (parts[row].part != part) continue;
    chain::PlacedPart placed{other, parts[row].enter, parts[row].leave()};
    placed.before = row == 0 ? connection.request.from.material
                             : std::optional(catalog.part(parts[row - 1].part).material_at(parts[row - 1].leave()));
    placed.behind = row + 1 == parts.size()
                        ? connection.request.to.material
                        : std::optional(catalog.part(parts[row + 1].part).material_at(parts[row + 1].enter));
    if (!allows(placed)) return false;
  }
  return true;
}

bool assembly_lets(const Catalog& catalog, const ConnectionPlan& connection, PartId other) {
  // Another metal would meet what stands round it in the tree.
  if (connection.request.galvanic == chain::Galvanic::avoid) return false;
  const bool has_a_way = catalog.part(other).ports.size() > 1;
  const chain::PlacedPart placed{other, 0, static_cast<std::uint8_t>(has_a_way ? 1 : 0)};
  return chain::allowed_parts(catalog, connection.request, {placed}).front();
}

/// The runs that a line of the list is for let the other part in its place.
bool may_stand_in(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, const ListItem& item,
                  PartId other) {
  for (const ConnectionPlan& connection : connections) {
    const auto& names = item.used_for;
    if (connection.run() == nullptr || std::find(names.begin(), names.end(), connection.name) == names.end()) continue;
    const std::vector<chain::RunEnd>& ends = connection.run()->ends;
    const bool at_end =
        std::any_of(ends.begin(), ends.end(), [&](const chain::RunEnd& end) { return end.device == item.part; });
    // What ends a run need not stand what the run must.
    if (at_end && !connection.request.banned.empty() && connection.request.banned[other.row]) return false;
    if (connection.chain() != nullptr && !chain_lets(catalog, connection, *item.part, other)) return false;
    if (connection.branched && !at_end && !assembly_lets(catalog, connection, other)) return false;
  }
  return true;
}

}  // namespace

void suggest_instead(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ListItem& item) {
  if (!item.part) return;
  const catalog::Part& part = catalog.part(*item.part);
  if (part.ports.empty()) return;
  const auto same_ports = [&](const catalog::Part& other) {
    return std::equal(part.ports.begin(), part.ports.end(), other.ports.begin(), other.ports.end(),
                      [](const catalog::Port& a, const catalog::Port& b) { return a.type == b.type; });
  };
  for (const catalog::PortUse& use : catalog.uses(part.ports[0].type)) {
    const catalog::Part& other = catalog.part(use.part);
    if (item.instead.size() == 2) return;
    if (use.port != 0 || use.part == *item.part || other.family != part.family || !other.stocked || !same_ports(other))
      continue;
    if (straight_length(other) != straight_length(part) || !other.air || other.material == part.material) continue;
    // A bung goes with the tank's metal.
    const bool welds_alike = catalog.material(other.material).welds_to == catalog.material(part.material).welds_to;
    if (catalog.family(part.family).weld_bung != catalog::WeldBung::none && !welds_alike) continue;
    if (!may_stand_in(catalog, connections, item, use.part)) continue;
    item.instead.push_back(part_title(catalog, use.part));
  }
}

}  // namespace riserun::plan
