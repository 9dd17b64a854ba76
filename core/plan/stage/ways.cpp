#include "plan/stage/ways.h"

#include "chain/finder.h"
#include "plan/stage/mounting.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool is_of_supply(const Job& job, const std::string& port) { return port_named(job.air.ports, port) != nullptr; }

/// Of a branch it has been settled; else air comes from the supply.
bool flows_to_base(const Job& job, const ConnectionPlan& connection, std::size_t end) {
  return connection.branched ? connection.run()->ends[end].feeds : is_of_supply(job, connection.ends[end]);
}

bool under_water(const Job& job, const JobPort& port) {
  if (port.place == Place::floor) return true;
  return port.place == Place::side && port.face_height && *port.face_height < job.reservoir.charge;
}

/// A relief valve guards the reservoir where it sees its air, whatever is opened or shut. nullopt: it does.
std::optional<Fact> why_it_guards_nothing(const Inputs& inputs, const ConnectionPlan& connection, const Way& way) {
  const std::string& name = way.branched ? way.end : way.connection;
  if (is_of_supply(inputs.job, connection.from)) return fact("relief_valve_on_the_supply", name, connection.from);
  const JobPort* port = port_named(inputs.job.reservoir.ports, connection.from);
  if (port == nullptr) return fact("relief_valve_off_the_reservoir", name, connection.from);
  if (connection.service == Service::water || under_water(inputs.job, *port))
    return fact("relief_valve_under_water", name, connection.from);
  if (const catalog::Part* part = first_that_stops(inputs.catalog, way))
    return fact("relief_valve_behind", name, part->name);
  return std::nullopt;
}

WayUse use_of(const Inputs& inputs, const ConnectionPlan& connection, std::size_t end) {
  if (connection.service == Service::water) return WayUse::water;
  if (flows_to_base(inputs.job, connection, end)) return WayUse::feed;
  if (const auto& device = connection.run()->ends[end].device) {
    return full_scale(inputs.catalog, *device) ? WayUse::gauge : WayUse::vent;
  }
  return is_of_supply(inputs.job, connection.from) ? WayUse::feed : WayUse::other;
}

/// End to end; what is sold by the length has the length that the plan gives it.
Length length_of(const Catalog& catalog, const ConnectionPlan& connection, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  if (link.cut_length) return *link.cut_length;
  if (part.cut_to_length && connection.hose_length) return *connection.hose_length;
  return part.ports[link.enter].reach + part.ports[link.leave()].reach;
}

/// As the part has them from `enter` to `leave`.
std::vector<hydraulics::LineElement> elements_of(const Catalog& catalog, const ConnectionPlan& connection,
                                                 const chain::RunPart& link) {
  chain::Chain alone;
  alone.parts = {link};
  std::vector<hydraulics::LineElement> elements = chain::line_elements(catalog, alone);
  if (catalog.part(link.part).cut_to_length && connection.hose_length && !link.cut_length)
    for (hydraulics::LineElement& element : elements) element.length = *connection.hose_length;
  return elements;
}

Way way_of(const Inputs& inputs, const ConnectionPlan& connection, std::size_t end) {
  const chain::Run& run = *connection.run();
  Way way{connection.name,
          connection.ends[end],
          use_of(inputs, connection, end),
          flows_to_base(inputs.job, connection, end),
          connection.branched.has_value(),
          {},
          run.ends[end].device,
          {}};
  for (const chain::RunPart& link : chain::way_to(run, end).parts)
    way.parts.push_back({link.part, link.enter, link.leave(), chain::bore_of_part(inputs.catalog, link),
                         length_of(inputs.catalog, connection, link), elements_of(inputs.catalog, connection, link)});
  if (way.to_base) {
    std::reverse(way.parts.begin(), way.parts.end());
    for (WayPart& part : way.parts) {
      std::swap(part.enter, part.leave);
      std::reverse(part.elements.begin(), part.elements.end());
    }
  }
  if (way.device && relief_setting(inputs.catalog, *way.device)) {
    way.guards_nothing = why_it_guards_nothing(inputs, connection, way);
    way.use = way.guards_nothing ? WayUse::idle_relief : WayUse::relief;
    way.upright = can_end_upright(inputs, connection.from, chain::way_to(run, end));
  }
  return way;
}

}  // namespace

std::vector<Way> plan_ways(const Inputs& inputs, const std::vector<ConnectionPlan>& connections) {
  std::vector<Way> ways;
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr) continue;
    for (std::size_t end = 0; end < connection.run()->ends.size(); ++end)
      ways.push_back(way_of(inputs, connection, end));
  }
  return ways;
}

}  // namespace riserun::plan
