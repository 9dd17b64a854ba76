#include "plan/judge/open.h"

#include "catalog/words/words.h"

#include <algorithm>
#include <iterator>

namespace riserun::plan {

namespace {

/// The female thread that takes the part, or that a nipple leads from to it.
PortTypeId thread_for(const Catalog& catalog, PartId part) {
  const PortTypeId own = catalog.part(part).ports[0].type;
  for (const catalog::Mate& mate : catalog.mates(own))
    if (catalog.port_type(mate.other).end == catalog::End::female) return mate.other;
  return own;
}

/// The cheapest half coupling of the tank's own metal.
std::optional<PartId> half_coupling_for(const Plan& plan, PartId part) {
  const Catalog& catalog = *plan.catalog;
  std::optional<PartId> cheapest;
  for (const catalog::PortUse& use : catalog.uses(thread_for(catalog, part))) {
    const catalog::Part& row = catalog.part(use.part);
    if (catalog.family(row.family).weld_bung != catalog::WeldBung::half_coupling ||
        catalog.material(row.material).welds_to != reservoir::weld_metal_name(plan.walls.metal.weld_metal))
      continue;
    if (!cheapest || row.price < catalog.part(*cheapest).price) cheapest = use.part;
  }
  return cheapest;
}

}  // namespace

bool is_used(const Plan& plan, const std::string& port) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
    return connection.from == port ||
           std::find(connection.ends.begin(), connection.ends.end(), port) != connection.ends.end();
  });
}

Mend into_lid(const std::string& port) { return {fact("port_into_lid", port), {}, {{{kPortIntoLid, port}}}}; }

Mend into_floor(const std::string& port) { return {fact("port_into_floor", port), {}, {{{kPortIntoFloor, port}}}}; }

const JobPort* free_port_for(const Plan& plan, std::string_view word) {
  constexpr std::string_view kDevices[] = {"relief", "gauge", "vent",   "exhaust", "drain", "air",
                                           "dip",    "fill",  "charge", "riser",   "level"};
  const auto tells_of = [](const JobPort& port, std::string_view device) {
    return catalog::lower_case(port.name).find(device) != std::string::npos;
  };
  const JobPort* any = nullptr;
  for (const JobPort& port : plan.job.reservoir.ports) {
    if (port.place.value_or(Place::lid) != Place::lid || !port.type.valid() || is_used(plan, port.name)) continue;
    if (&port == riser_bung(plan.job)) continue;
    if (tells_of(port, word)) return &port;
    const bool others = std::any_of(std::begin(kDevices), std::end(kDevices),
                                    [&](std::string_view device) { return tells_of(port, device); });
    if (any == nullptr && !others) any = &port;
  }
  return any;
}

void put_on_lid(const Plan& plan, PartId part, const JobPort* port, Finding& finding) {
  const Catalog& catalog = *plan.catalog;
  if (port != nullptr) {
    finding.mend = fact(catalog.part(part).stocked ? "on_the_free_port_from_stock" : "on_the_free_port",
                        quantity::Facts{*finding.mend}, port->name, catalog.part(part).name);
    finding.ways_to_try = {{{kDeviceOn, port->name, part}}};
    return;
  }
  finding.ways_to_mend = {{{"connections", "", part}}};
  const auto bung = half_coupling_for(plan, part);
  if (!bung) return;
  finding.mend = fact("on_a_bung_of_its_own", quantity::Facts{*finding.mend}, catalog.part(*bung).name,
                      catalog.part(*bung).outside_diameter + 2.0 * kBossGap);
  finding.also_buy.push_back({"bung", "weld bung", fact("to_weld_in_for_it"), bung});
}

Change other_device(const Way& way, PartId part) {
  return way.branched ? Change{kDeviceOfBranch, way.end, part} : Change{kDeviceOf, way.connection, part};
}

bool devices_are_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
    return connection.run() == nullptr && (connection.branched || connection.ends_in);
  });
}

const chain::Need* asked_check(const Catalog& catalog, const ConnectionPlan& connection) {
  const auto is_check = [&](PartId part) {
    return catalog.family(catalog.part(part).family).role == catalog::Role::check_valve;
  };
  for (const chain::Need& need : connection.request.needs)
    if (!need.parts.empty() && std::all_of(need.parts.begin(), need.parts.end(), is_check)) return &need;
  return nullptr;
}

bool is_asked_as_vent(const Catalog& catalog, const Job& job, const ConnectionPlan& connection) {
  if (connection.service != Service::air || !connection.ends_in) return false;
  const catalog::Part& end = catalog.part(*connection.ends_in);
  const catalog::Family& family = catalog.family(end.family);
  return family.role == catalog::Role::device && family.can_shut && !end.one_way &&
         port_named(job.reservoir.ports, connection.from) != nullptr;
}

bool feed_is_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
    const bool from_supply = port_named(plan.job.air.ports, connection.from) != nullptr ||
                             std::any_of(connection.ends.begin(), connection.ends.end(), [&](const std::string& end) {
                               return port_named(plan.job.air.ports, end) != nullptr;
                             });
    return connection.run() == nullptr && from_supply;
  });
}

}  // namespace riserun::plan
