#include "plan/stage/connection_request.h"

#include "chain/ask/needs.h"
#include "plan/stage/duty.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using chain::ChainRequest;
using chain::Freedom;
using quantity::fact;

const VolumeFlow kUsualFlow = us_gallons_per_minute(10.0);

/// The gauge pressure that every part must stand unless the job says otherwise: all that the regulator can be set to.
GaugePressure usual_rating(const Settled& settled) { return settled.regulator_range; }

VolumeFlow wanted_flow(const Inputs& inputs) {
  const Job& job = inputs.job;
  if (!job.wishes.fill_time) return kUsualFlow;
  return inputs.settled.table.volume_at(job.table.depth) / *job.wishes.fill_time;
}

bool is_too_short(const catalog::Part& part, Length wanted) { return part.remnant && straight_length(part) < wanted; }

/// Splinters fly from a fitting; a hose tears, and so does tube, which goes nowhere without fittings.
bool shatters(const Catalog& catalog, const catalog::Part& part) {
  return !part.flexible && !part.cut_to_length && !catalog.material(part.material).compressed_air;
}

/// What the job avoids; pieces that are shorter than the hose that it asks for; and, on a port of the reservoir,
/// plastic that shatters under compressed air: the leak test and an uncovered riser put air there even where water is
/// meant to run. What is asked for by name is let in, but for what shatters; a run of air keeps that out by its own
/// rule.
std::vector<bool> banned_parts(const Inputs& inputs, const JobConnection& connection, Service service) {
  const Catalog& catalog = inputs.catalog;
  const std::vector<JobPort>& ports = inputs.job.reservoir.ports;
  std::vector<bool> banned(catalog.parts().size(), false);
  if (port_named(ports, connection.from) != nullptr || port_named(ports, connection.to) != nullptr)
    for (std::size_t row = 0; row < banned.size(); ++row) banned[row] = !catalog.parts()[row].air;
  for (const chain::Need& need : connection.needs)
    for (const PartId part : need.parts)
      banned[part.row] = banned[part.row] && service == Service::water && shatters(catalog, catalog.part(part));
  for (const chain::Avoidance& avoidance : connection.avoided)
    for (const PartId part : avoidance.parts) banned[part.row] = true;
  for (std::size_t row = 0; row < banned.size() && connection.hose_length; ++row)
    banned[row] = banned[row] || is_too_short(catalog.parts()[row], *connection.hose_length);
  return banned;
}

/// What the wish for little loss is for is the water: a line of air that loses least is a tower of wide fittings.
chain::Order order_of_all(chain::Order wished, Service service) {
  return service == Service::air && wished == chain::Order::loss ? chain::Order::line : wished;
}

/// From a port of the lid that no riser hangs in to a gauge, a relief valve or a valve: over the water is air.
bool stands_in_the_air(const Inputs& inputs, const JobConnection& connection) {
  const JobPort* port = port_named(inputs.job.reservoir.ports, connection.from);
  if (port == nullptr || port->place.value_or(Place::lid) != Place::lid || port == riser_bung(inputs.job)) return false;
  const auto is_for_air = [&](const std::optional<EndDevice>& end) {
    if (!end) return false;
    const catalog::Family& family = inputs.catalog.family(inputs.catalog.part(end->parts.front()).family);
    return family.role == catalog::Role::gauge || family.role == catalog::Role::relief_valve ||
           (family.role == catalog::Role::device && family.can_shut);
  };
  return is_for_air(connection.ends_in) ||
         std::any_of(connection.branches.begin(), connection.branches.end(),
                     [&](const JobBranch& branch) { return is_for_air(branch.ends_in); });
}

}  // namespace

bool is_air_port(const Job& job, const std::string& name) { return port_named(job.air.ports, name) != nullptr; }

Service settle_service(const Inputs& inputs, const JobConnection& connection, Remarks& remarks) {
  if (connection.carries) return *connection.carries;
  const Job& job = inputs.job;
  const bool air = stands_in_the_air(inputs, connection) || is_air_port(job, connection.from) ||
                   is_air_port(job, connection.to) ||
                   std::any_of(connection.branches.begin(), connection.branches.end(),
                               [&](const JobBranch& branch) { return is_air_port(job, branch.to); });
  remarks.assume(fact(air ? "connection_carries_air" : "connection_carries_water", connection.name),
                 key_of(job, connection, "carries"));
  return air ? Service::air : Service::water;
}

Freedom settle_freedom(const Job& job, const JobConnection& connection, const std::string& port,
                       const std::optional<Freedom>& given, Remarks& remarks) {
  if (given) return *given;
  const bool loose = is_air_port(job, port);
  const std::string held_key = port == connection.from ? key_of(job, connection, "held.from")
                               : port == connection.to ? key_of(job, connection, "held.to")
                                                       : std::string();
  remarks.assume(fact(loose ? "end_hangs_loose" : "end_is_fixed", port, connection.name), held_key);
  return loose ? Freedom::loose : Freedom::fixed;
}

chain::PortEnd end_at(const Job& job, const JobConnection& connection, const std::string& name,
                      const std::optional<Freedom>& freedom, Remarks& remarks) {
  const JobPort* port = find_port(job, name);
  return {port->type, port->material, settle_freedom(job, connection, name, freedom, remarks), "the " + name,
          !is_air_port(job, name)};
}

std::vector<PartId> at_home_beside(const Catalog& catalog, const JobPort& port, std::vector<PartId> devices) {
  const catalog::KindId beside = catalog.port_type(port.type).kind;
  const auto is_foreign = [&](const catalog::Port& own) {
    const auto& threads = catalog.foreign_threads();
    return std::any_of(threads.begin(), threads.end(), [&](const catalog::ForeignThread& thread) {
      return thread.kind == catalog.port_type(own.type).kind &&
             std::find(thread.at_home.begin(), thread.at_home.end(), beside) == thread.at_home.end();
    });
  };
  const auto is_at_home = [&](PartId id) {
    const std::vector<catalog::Port>& ports = catalog.part(id).ports;
    return !std::all_of(ports.begin(), ports.end(), is_foreign);
  };
  if (std::any_of(devices.begin(), devices.end(), is_at_home))
    std::erase_if(devices, [&](PartId id) { return !is_at_home(id); });
  return devices;
}

ChainRequest request_for(const Inputs& inputs, const JobConnection& connection, Service service, Remarks& remarks) {
  ChainRequest request;
  static_cast<chain::RunRules&>(request) = static_cast<const chain::RunRules&>(connection);
  request.from = end_at(inputs.job, connection, connection.from, connection.from_freedom, remarks);
  request.order = connection.order.value_or(order_of_all(inputs.settled.order, service));
  request.banned = banned_parts(inputs, connection, service);
  request.service = service;
  request.rating = connection.rating.value_or(usual_rating(inputs.settled));
  request.most_bushings = connection.most_bushings.value_or(chain::kUsualMostBushings);
  request.hottest = settle_hottest(inputs, connection, service, remarks);
  request.vacuum = settle_vacuum(inputs, connection, service, remarks);
  request.needs =
      chain::told_apart(chain::as_meant(inputs.catalog, connection.needs, request.vacuum), connection.needs_in_order);
  request.galvanic = chain::galvanic_meant(inputs.catalog, request);
  request.may_narrow = true;  // the judge says where the line's bore is missed, and which gap is long enough
  request.flow = wanted_flow(inputs);
  request.bin = inputs.job.bin;
  return request;
}

}  // namespace riserun::plan
