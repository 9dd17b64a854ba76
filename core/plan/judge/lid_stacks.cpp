// What stands upright on the lid has room under the table.
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace riserun::plan {

namespace {

const Length kLowestBox = inches(4.0);  // that a hand and a torch get into (common practice)

constexpr double kStraightOn = 180.0;  // degrees between the ports of a part that does not turn

bool turns_aside(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  const double between = part.ports[link.enter].heading_degrees - part.ports[link.leave()].heading_degrees;
  return std::abs(std::abs(between) - kStraightOn) > 1.0;
}

Length stack_of(const Catalog& catalog, const chain::RunPart& link) {
  const std::vector<catalog::Port>& ports = catalog.part(link.part).ports;
  return link.cut_length.value_or(ports[link.enter].reach + ports[link.leave()].reach);
}

/// Of a gauge or a relief valve, which reaches as far beyond its middle; of a valve from end to end.
Length stack_of(const catalog::Part& device) {
  const std::vector<catalog::Port>& ports = device.ports;
  return ports.size() == 1 ? ports[0].reach * 2.0 : ports[0].reach + ports[1].reach;
}

/// Over the face of its bung, up to where the way turns aside or bends; at the least, as an elbow's own body is left
/// out.
/// @param device  that stands at its end
Length stands_so_high(const Catalog& catalog, const chain::Chain& way, const std::optional<PartId>& device) {
  Length height{};
  for (std::size_t row = 0; row < way.parts.size(); ++row) {
    const catalog::Part& part = catalog.part(way.parts[row].part);
    if (part.flexible || catalog.family(part.family).flexible || turns_aside(catalog, way.parts[row])) return height;
    height += stack_of(catalog, way.parts[row]) - way.joints[row].make_up;
  }
  return device ? height + stack_of(catalog.part(*device)) - way.joints.back().make_up : height;
}

/// Of all ways of a tree, the highest.
Length stands_so_high(const Plan& plan, const ConnectionPlan& connection, bool from_lid) {
  const Catalog& catalog = *plan.catalog;
  Length highest{};
  if (connection.assembly() != nullptr) {
    const chain::Run& run = *connection.run();
    for (std::size_t end = 0; end < run.ends.size(); ++end)
      highest = std::max(highest, stands_so_high(catalog, chain::way_to(run, end), run.ends[end].device));
    return highest;
  }
  chain::Chain way = *connection.chain();
  if (!from_lid) {
    std::reverse(way.parts.begin(), way.parts.end());
    std::reverse(way.joints.begin(), way.joints.end());
  }
  return stands_so_high(catalog, way, connection.ends_in);
}

bool ends_in_relief_valve(const Plan& plan, const ConnectionPlan& connection) {
  const auto is_relief = [&](const std::optional<PartId>& part) {
    return part && plan.catalog->family(plan.catalog->part(*part).family).role == catalog::Role::relief_valve;
  };
  const chain::Run* run = connection.assembly();
  return is_relief(connection.ends_in) ||
         (run != nullptr && std::any_of(run->ends.begin(), run->ends.end(),
                                        [&](const chain::RunEnd& end) { return is_relief(end.device); }));
}

/// It lies over the whole lid, as far as the job says.
bool table_covers_lid(const Plan& plan) {
  const JobReservoir& tank = plan.job.reservoir;
  const JobTable& table = plan.job.table;
  const Length narrower = std::min(table.length, table.width);
  const bool aside = std::any_of(plan.job.connections.begin(), plan.job.connections.end(), [&](const auto& each) {
    const bool to_table = port_named(table.ports, each.from) != nullptr || port_named(table.ports, each.to) != nullptr;
    return to_table && each.offset && *each.offset > narrower * 0.5;
  });
  return !aside && quantity::at_most(std::min(tank.length, tank.width), narrower) &&
         quantity::at_most(std::max(tank.length, tank.width), std::max(table.length, table.width));
}

}  // namespace

void judge_lid_stacks(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const JobReservoir& tank = plan.job.reservoir;
  const Length underside = plan.job.table.floor_height;  // at the highest, without sheet and frame
  const Length lid = tank.height + tank.sheet.thickness;
  if (!table_covers_lid(plan) || !quantity::more_than(underside, lid)) return;
  struct Stack {
    std::string connection;
    std::string port;
    Length stands{};
    Length room{};
    bool is_relief = false;
  };
  std::vector<Stack> stacks;
  Length higher{};  // that all of them have room under
  for (const ConnectionPlan& connection : plan.connections) {
    if (connection.run() == nullptr || connection.service != Service::air) continue;
    const JobPort* from = port_named(tank.ports, connection.from);
    const JobPort* port = from != nullptr ? from : port_named(tank.ports, connection.to);
    if (port == nullptr || port->place.value_or(Place::lid) != Place::lid) continue;
    const Length stands = stands_so_high(plan, connection, from != nullptr);
    const Length room = underside - port->face_height.value_or(lid);
    if (quantity::at_most(stands, room)) continue;
    higher = std::max(higher, inches(std::ceil(in_inches(stands - room))));
    stacks.push_back({connection.name, port->name, stands, room, ends_in_relief_valve(plan, connection)});
  }
  const Length floor = underside + higher;
  const Length lower = tank.height - higher;
  for (const Stack& stack : stacks) {
    const Fact mend = stack.is_relief ? fact("turn_relief_aside_or_table_higher", stack.port, higher, floor)
                                      : fact("turn_it_aside_or_table_higher", stack.port, higher, floor);
    Finding& finding =
        open.not_yet(Topic::connections, fact("no_room_under_the_table", stack.connection, stack.stands, stack.room),
                     Against{stack.stands, stack.room}, mend, "worked out");
    finding.ways_to_try = {{{kTableHigher, higher}}};
    if (!quantity::more_than(lower, kLowestBox)) continue;
    finding.or_else = {{mend, {}, finding.ways_to_try}};
    finding.mend = fact("either_mend", quantity::Facts{mend, fact("reservoir_so_low", lower)});
    finding.ways_to_try.push_back({{kReservoirHeight, lower}});
  }
}

}  // namespace riserun::plan
