// The connections: what is asked of the chain search for each, and what comes of the answer.
#include "chain/finder.h"
#include "plan/stage/draft_duty.h"
#include "plan/stage/drafting.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace riserun::plan {

namespace {

using chain::Chain;
using chain::ChainRequest;
using chain::Freedom;

const VolumeFlow kUsualFlow = us_gallons_per_minute(10.0);
const double kLeastShareOfRiserBore = 0.6;  // passes a barb one size under the riser: common practice
const Length kBand = inches(0.5);           // width of a clamp's band: common practice
const Length kBandGap = inches(0.25);       // from the hose's end, and between two bands: common practice

bool is_air_port(const Job& job, const std::string& name) { return port_named(job.air.ports, name) != nullptr; }

}  // namespace

Service settle_service(Draft& draft, const JobConnection& connection) {
  if (connection.carries) return *connection.carries;
  const Job& job = draft.plan.job;
  const bool air = is_air_port(job, connection.from) || is_air_port(job, connection.to) ||
                   std::any_of(connection.branches.begin(), connection.branches.end(),
                               [&](const JobBranch& branch) { return is_air_port(job, branch.to); });
  draft.assume(fmt::format("what '{}' carries", connection.name), air ? "air" : "water",
               air ? "one end is on the air supply" : "neither end is on the air supply",
               draft.key_of(connection, "carries"));
  return air ? Service::air : Service::water;
}

namespace {

const char* freedom_name(Freedom freedom) {
  switch (freedom) {
    case Freedom::fixed:
      return "fixed";
    case Freedom::sliding:
      return "slides, cannot turn";
    case Freedom::spinning:
      return "turns, cannot slide";
    case Freedom::loose:
      return "free to turn and slide";
  }
  return "";
}

}  // namespace

Freedom settle_freedom(Draft& draft, const JobConnection& connection, const std::string& port,
                       const std::optional<Freedom>& given) {
  if (given) return *given;
  const bool loose = is_air_port(draft.plan.job, port);
  const Freedom freedom = loose ? Freedom::loose : Freedom::fixed;
  const std::string held_key = port == connection.from ? draft.key_of(connection, "held.from")
                               : port == connection.to ? draft.key_of(connection, "held.to")
                                                       : std::string();
  draft.assume(fmt::format("how '{}' is held in '{}'", port, connection.name), freedom_name(freedom),
               loose ? "it hangs on an air hose" : "its port is welded or mounted", held_key);
  return freedom;
}

namespace {

chain::PortEnd end_at(Draft& draft, const JobConnection& connection, const std::string& name,
                      const std::optional<Freedom>& freedom) {
  const JobPort* port = find_port(draft.plan.job, name);
  return {port->type, port->material, settle_freedom(draft, connection, name, freedom), "the " + name,
          !is_air_port(draft.plan.job, name)};
}

/// The gauge pressure that every part must stand unless the job says otherwise: all that the regulator can be set to.
GaugePressure usual_rating(const Draft& draft) { return draft.settled.regulator_range; }

VolumeFlow wanted_flow(const Draft& draft) {
  const Job& job = draft.plan.job;
  if (!job.wishes.fill_time) return kUsualFlow;
  return draft.settled.table.volume_at(job.table.depth) / *job.wishes.fill_time;
}

/// What the job avoids; and, on a port of the reservoir, plastic that shatters under compressed air: the leak test and
/// an uncovered riser put air there even where water is meant to run. What is asked for by name is let in.
std::vector<bool> banned_parts(const Draft& draft, const JobConnection& connection) {
  const Catalog& catalog = draft.catalog();
  const std::vector<JobPort>& ports = draft.plan.job.reservoir.ports;
  std::vector<bool> banned(catalog.parts().size(), false);
  if (port_named(ports, connection.from) != nullptr || port_named(ports, connection.to) != nullptr)
    for (std::size_t row = 0; row < banned.size(); ++row) banned[row] = !catalog.parts()[row].air;
  for (const chain::Need& need : connection.needs)
    for (const PartId part : need.parts) banned[part.row] = false;
  for (const chain::Avoidance& avoidance : connection.avoid)
    for (const PartId part : avoidance.parts) banned[part.row] = true;
  return banned;
}

}  // namespace

ChainRequest request_for(Draft& draft, const JobConnection& connection, Service service) {
  ChainRequest request;
  request.from = end_at(draft, connection, connection.from, connection.from_freedom);
  request.order = connection.order.value_or(draft.settled.order);
  request.needs = connection.needs;
  request.needs_in_order = connection.needs_in_order;
  request.banned = banned_parts(draft, connection);
  request.avoided = connection.avoid;
  request.service = service;
  request.rating = connection.rating.value_or(usual_rating(draft));
  request.galvanic = connection.galvanic;
  request.special_order = connection.special_order;
  request.smallest_bore = connection.smallest_bore;
  request.room = connection.room;
  request.most_parts = connection.most_parts;
  request.most_bushings = connection.most_bushings.value_or(chain::kUsualMostBushings);
  request.hottest = settle_hottest(draft, connection, service);
  request.vacuum = settle_vacuum(draft, connection, service);
  request.flow = wanted_flow(draft);
  request.bin = draft.bin.bin();
  return request;
}

namespace {

/// Ways in: a gauge is entered by its port, a check valve by its first, a ball valve by either.
std::vector<std::uint8_t> ports_to_enter(const catalog::Part& part) {
  if (part.one_way || part.ports.size() == 1) return {0};
  return {0, 1};
}

/// For each kind of port that the devices have: the one that is bought (stocked before ordered, then the cheapest), and
/// all that are in the bin.
std::vector<chain::EndPart> device_ends(const Draft& draft, const std::vector<PartId>& devices) {
  const Catalog& catalog = draft.catalog();
  const auto rank = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return std::tuple(!part.stocked, part.price.cents(), part.id);
  };
  std::vector<chain::EndPart> ends;
  for (const PartId device : devices) {
    const catalog::Part& part = catalog.part(device);
    for (const std::uint8_t port : ports_to_enter(part)) {
      const PortTypeId type = part.ports[port].type;
      const auto bought = std::find_if(ends.begin(), ends.end(),
                                       [&](const chain::EndPart& end) { return end.on_sale && end.end.type == type; });
      const bool known = std::any_of(ends.begin(), ends.end(), [&](const chain::EndPart& end) {
        return end.part == device && end.end.type == type;
      });
      if (known) continue;
      const bool buy = bought == ends.end() || rank(device) < rank(bought->part);
      if (buy && bought != ends.end()) bought->on_sale = false;
      if (buy || draft.bin.count_of(device) > 0)
        ends.push_back({device, {type, part.material, Freedom::loose, "the " + part.name}, buy});
    }
  }
  std::erase_if(ends, [&](const chain::EndPart& end) { return !end.on_sale && draft.bin.count_of(end.part) == 0; });
  return ends;
}

/// Hose and tube: what is sold by the length.
std::vector<PartId> sold_by_length_in(const Catalog& catalog, const Chain& chain) {
  std::vector<PartId> pieces;
  for (const chain::ChainPart& part : chain.parts)
    if (catalog.part(part.part).cut_to_length) pieces.push_back(part.part);
  return pieces;
}

/// The height of a port's face: given, or worked out for the riser's bung in the lid and for a port in the table's
/// floor.
std::optional<Length> face_height(const Draft& draft, const std::string& name, bool& assumed) {
  const Job& job = draft.plan.job;
  const JobPort* port = find_port(job, name);
  if (port == nullptr) return std::nullopt;
  if (port->face_height) return port->face_height;
  const RiserPlan& riser = draft.plan.riser;
  assumed = true;
  if (name == riser.bung && !is_air_port(job, name))
    return job.reservoir.height + riser.request.bung_length - riser.request.bung_projection;
  const bool in_table_floor =
      port_named(job.table.ports, name) != nullptr && port->place.value_or(Place::floor) == Place::floor;
  if (in_table_floor) return job.table.floor_height;
  return std::nullopt;
}

std::optional<Length> gap_between(Draft& draft, const JobConnection& connection, bool& assumed) {
  if (connection.gap) return connection.gap;
  const auto from = face_height(draft, connection.from, assumed);
  const auto to = face_height(draft, connection.to, assumed);
  if (!from || !to) return std::nullopt;
  const Length gap = *from > *to ? *from - *to : *to - *from;
  if (assumed)
    draft.assume(fmt::format("gap of '{}'", connection.name), write_length(gap, draft.units()),
                 "from the lid's bung to the table's floor; measure it between the faces and give 'gap'",
                 draft.key_of(connection, "gap"));
  return gap;
}

/// What the run has to make by itself: the gap, where it was measured, nothing moves along it, and no hose length that
/// the job gives settles it already.
std::optional<chain::Span> span_of(const JobConnection& connection, const ConnectionPlan& plan, bool assumed) {
  const auto moves = [](Freedom freedom) { return freedom == Freedom::sliding || freedom == Freedom::loose; };
  if (!plan.gap || assumed || connection.hose_length || connection.ends_in) return std::nullopt;
  if (moves(plan.request.from.freedom) || moves(plan.request.to.freedom)) return std::nullopt;
  return chain::Span{*plan.gap, connection.offset.value_or(metres(0.0)), metres(0.0)};
}

/// The lengths of a run that makes its span.
void settle_span(const Catalog& catalog, ConnectionPlan& plan) {
  const Chain& chain = *plan.chain();
  plan.run_length = chain.length;
  plan.run_tolerance = chain.length_tolerance;
  for (const chain::ChainPart& part : chain.parts)
    if (part.cut_length && catalog.part(part.part).flexible) plan.hose_length = part.cut_length;
}

/// Given; or what the gap leaves over; or the length that the catalog sells it in.
void settle_hose(Draft& draft, const JobConnection& connection, ConnectionPlan& plan) {
  const Catalog& catalog = draft.catalog();
  const Chain* chain = plan.chain();
  if (chain->span) return settle_span(catalog, plan);
  plan.run_length = chain->length;
  plan.run_tolerance = chain->length_tolerance;
  const std::vector<PartId> hoses = sold_by_length_in(catalog, *chain);
  if (hoses.empty()) return;
  const Length usual = straight_length(catalog.part(hoses.front()));
  const Length rigid = chain->length - usual * static_cast<double>(hoses.size());
  plan.hose_length = connection.hose_length.value_or(usual);
  if (!connection.hose_length && plan.gap && hoses.size() == 1) {
    const double along = in_metres(*plan.gap - rigid);
    const double aside = in_metres(connection.offset.value_or(metres(0.0)));
    if (along > 0.0) plan.hose_length = metres(std::hypot(along, aside));
  } else if (!connection.hose_length) {
    draft.assume(fmt::format("length of the {} in '{}'", catalog.part(hoses.front()).name, connection.name),
                 write_length(*plan.hose_length, draft.units()), "neither its length nor the gap was given",
                 draft.key_of(connection, "hose length"));
  }
  plan.run_length = rigid + *plan.hose_length * static_cast<double>(hoses.size());
}

/// Clamps: one a hose end; a second where the barb is long enough to carry both bands (common practice).
void count_clamps(const Catalog& catalog, ConnectionPlan& plan) {
  const Length for_two = kBandGap * 2.0 + kBand * 2.0;
  for (const chain::ChainJoint& joint : plan.chain()->joints) {
    if (catalog.mating_rules()[joint.rule].seal != "clamp") continue;
    ++plan.hose_joints;
    plan.clamps += joint.make_up >= for_two ? 2 : 1;
  }
}

/// Says when a run without a hose does not come out at the gap, and by how much.
void check_gap(Draft& draft, ConnectionPlan& plan, const JobConnection& connection) {
  if (!plan.gap || plan.chain()->span) return;
  const UnitSystem units = draft.units();
  const Length off = *plan.gap - plan.run_length;
  if (plan.hose_length) {
    if (off > plan.run_tolerance)
      plan.cautions.push_back(
          fmt::format("The {} is {} too short for the gap of {}.",
                      draft.catalog().part(sold_by_length_in(draft.catalog(), *plan.chain()).front()).name,
                      write_length(off, units), write_length(*plan.gap, units)));
    return;
  }
  if (connection.offset && *connection.offset > inches(0.25))
    plan.cautions.push_back(
        fmt::format("The ports are {} out of line and this run has nothing that gives: ask for a "
                    "hose or a flexible connector in 'need'.",
                    write_length(*connection.offset, units)));
  const Length miss = off > metres(0.0) ? off : off * -1.0;
  if (miss <= plan.run_tolerance) return;
  plan.cautions.push_back(
      fmt::format("This run is {} {} for the gap of {}, and its thread tolerance is only {} either way: {}.",
                  write_length(miss, units), off > metres(0.0) ? "too short" : "too long",
                  write_length(*plan.gap, units), write_length(plan.run_tolerance, units),
                  off > metres(0.0) ? "put a nipple that much longer into it, or ask for a hose in 'need'"
                                    : "move the ports apart by that much, or ask for a shorter order"));
}

void refuse_none(Draft& draft, const ConnectionPlan& plan) {
  const chain::NoChain& none = *plan.none();
  Refusal refusal{Topic::connections, fmt::format("'{}' has no chain: {}", plan.name, none.reason), "", "", ""};
  const Catalog& catalog = draft.catalog();
  if (none.only_the_distance) {
    refusal.asked = write_length(*plan.gap, draft.units());
    const auto nearest = none.nearest_above ? none.nearest_above : none.nearest_below;
    if (nearest) refusal.allowed = write_length(*nearest, draft.units());
  }
  if (none.special_order) {
    refusal.mend = fmt::format("order one part specially: {}", part_title(catalog, *none.special_order));
  } else if (none.missing_part) {
    refusal.mend = fmt::format("one part would complete it: {}", *none.missing_part);
  } else if (!none.mends.empty()) {
    refusal.mend = none.mends.front();
  }
  draft.refuse(std::move(refusal));
}

void refuse_unbuildable(Draft& draft, const ConnectionPlan& plan) {
  const Chain& chain = *plan.chain();
  if (chain.buildable) return;
  draft.refuse({Topic::connections,
                fmt::format("'{}' cannot be screwed together: {}", plan.name, chain.not_buildable_because), "", "",
                "let one end turn, or add a union to 'need'"});
}

/// Unless the job says otherwise, the run from the riser to the table is not necked down far below the riser: the
/// cheapest fittings are often the smallest. Where nothing wider can be had, the limit gives way.
void keep_the_run_wide(Draft& draft, const chain::Finder& finder, const JobConnection& connection,
                       ConnectionPlan& plan) {
  const std::vector<JobPort>& table = draft.plan.job.table.ports;
  const bool at_riser = plan.from == draft.plan.riser.bung || plan.to == draft.plan.riser.bung;
  const bool at_table = port_named(table, plan.from) != nullptr || port_named(table, plan.to) != nullptr;
  const bool is_main = plan.service == Service::water && at_riser && at_table && !connection.smallest_bore;
  if (!is_main) return;
  plan.request.smallest_bore = draft.plan.riser.request.pipe.bore * kLeastShareOfRiserBore;
  if (finder.can_join(plan.request, plan.span)) {
    draft.assume(fmt::format("smallest bore in '{}'", connection.name),
                 write_thickness(*plan.request.smallest_bore, draft.units(), 3),
                 "0.6 of the riser's bore: a narrower run would throttle the fill",
                 draft.key_of(connection, "smallest bore"));
  } else {
    plan.request.smallest_bore.reset();
  }
}

/// What is asked for a connection, and what of the bin it may want.
chain::Demand ask(Draft& draft, const chain::Finder& finder, const JobConnection& connection, ConnectionPlan& plan) {
  plan.name = connection.name;
  plan.from = connection.from;
  plan.to = connection.to;
  plan.service = settle_service(draft, connection);
  plan.request = request_for(draft, connection, plan.service);
  bool gap_is_assumed = false;
  plan.gap = gap_between(draft, connection, gap_is_assumed);
  plan.answer = chain::NoChain{};
  chain::Demand demand;
  if (connection.ends_in) {
    demand.ends = device_ends(draft, proved_devices(draft, connection.ends_in->parts, plan));
    plan.request.to = demand.ends.front().end;
  } else {
    plan.request.to = end_at(draft, connection, connection.to, connection.to_freedom);
    plan.span = span_of(connection, plan, gap_is_assumed);
    keep_the_run_wide(draft, finder, connection, plan);
  }
  demand.request = plan.request;
  demand.span = plan.span;
  return demand;
}

void settle(Draft& draft, const JobConnection& connection, ConnectionPlan& plan) {
  if (plan.ends_in) plan.to = part_title(draft.catalog(), *plan.ends_in);
  if (plan.chain() == nullptr) {
    refuse_none(draft, plan);
    return;
  }
  refuse_unbuildable(draft, plan);
  if (plan.ends_in) draft.extras.push_back({*plan.ends_in, plan.ends_in_from_bin, plan.name});
  plan.cautions.insert(plan.cautions.end(), plan.chain()->cautions.begin(), plan.chain()->cautions.end());
  settle_hose(draft, connection, plan);
  count_clamps(draft.catalog(), plan);
  check_gap(draft, plan, connection);
}

}  // namespace

void draft_connections(Draft& draft) {
  const Job job = draft.plan.job;
  const chain::Finder finder(draft.catalog());
  std::vector<chain::Demand> demands;
  std::vector<const JobConnection*> runs;
  for (const JobConnection& connection : job.connections) {
    if (!connection.branches.empty()) continue;  // see draft_manifolds
    runs.push_back(&connection);
    ConnectionPlan plan;
    demands.push_back(ask(draft, finder, connection, plan));
    draft.plan.connections.push_back(std::move(plan));
  }
  share_bin(draft, finder, demands);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    ConnectionPlan& plan = draft.plan.connections[i];
    leave_valve_with_reservoir(draft, finder, plan);
    settle(draft, *runs[i], plan);
    const bool reaches_table =
        port_named(job.table.ports, plan.from) != nullptr || port_named(job.table.ports, plan.to) != nullptr;
    const bool at_riser = plan.from == draft.plan.riser.bung || plan.to == draft.plan.riser.bung;
    if (plan.service == Service::water && reaches_table && at_riser && !draft.plan.water_connection)
      draft.plan.water_connection = i;
  }
}

}  // namespace riserun::plan
