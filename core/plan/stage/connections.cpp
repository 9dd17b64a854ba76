// The connections: what is asked of the chain search for each, and what comes of the answer.
#include "plan/stage/connections.h"

#include "plan/judge/higher_table.h"
#include "plan/judge/open.h"
#include "plan/stage/branches.h"
#include "plan/stage/connection_request.h"
#include "plan/stage/duty.h"
#include "plan/stage/hose_order.h"
#include "plan/stage/mounting.h"
#include "plan/stage/refused_run.h"
#include "plan/stage/run_length.h"
#include "plan/stage/valves.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace riserun::plan {

namespace {

using chain::Freedom;
using quantity::fact;

const Length kMostLonger = inches(24.0);
const double kLeastShareOfRiserBore = 0.6;  // passes a barb one size under the riser: common practice

/// Ways in: a gauge is entered by its port, a check valve by its first, a ball valve by either.
std::vector<std::uint8_t> ports_to_enter(const catalog::Part& part) {
  if (part.arrow || part.ports.size() == 1) return {0};
  return {0, 1};
}

/// For each kind of port that the devices have: the one that is bought (stocked before ordered, then the cheapest), and
/// all that are in the bin.
std::vector<chain::EndPart> device_ends(const Catalog& catalog, const Bin& bin, const std::vector<PartId>& devices) {
  const auto rank = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return std::tuple(!part.stocked, part.price.weight(), part.id);
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
      if (buy || bin.count_of(device) > 0)
        ends.push_back({device, {type, part.material, Freedom::loose, "the " + part.name}, buy});
    }
  }
  std::erase_if(ends, [&](const chain::EndPart& end) { return !end.on_sale && bin.count_of(end.part) == 0; });
  return ends;
}

/// The port of a run from the reservoir that nothing joins but plastic which shatters under compressed air, as a PVC
/// socket; nullptr: there is none.
const JobPort* port_of_plastic_alone(const Inputs& inputs, const ConnectionPlan& plan) {
  const Catalog& catalog = inputs.catalog;
  const std::vector<JobPort>& tank = inputs.job.reservoir.ports;
  if (port_named(tank, plan.from) == nullptr && port_named(tank, plan.to) == nullptr) return nullptr;
  for (const std::string& name : {plan.from, plan.to}) {
    const JobPort* port = find_port(inputs.job, name);
    if (port == nullptr || !port->type.valid() || catalog.mates(port->type).empty()) continue;
    const auto joins_in_air = [&](const catalog::Mate& mate) {
      const auto uses = catalog.uses(mate.other);
      return std::any_of(uses.begin(), uses.end(),
                         [&](const catalog::PortUse& use) { return catalog.part(use.part).air; });
    };
    const auto mates = catalog.mates(port->type);
    if (std::none_of(mates.begin(), mates.end(), joins_in_air)) return port;
  }
  return nullptr;
}

/// A need that only parts meet which shatter under compressed air; nullptr: none.
const chain::Need* plastic_need(const Catalog& catalog, const chain::ChainRequest& request) {
  for (const chain::Need& need : request.needs)
    if (!need.parts.empty() &&
        std::none_of(need.parts.begin(), need.parts.end(), [&](PartId part) { return catalog.part(part).air; }))
      return &need;
  return nullptr;
}

/// All that would join it is kept off the reservoir.
bool clashes_with_plastic(const chain::NoChain& none) {
  return std::any_of(none.conflict.begin(), none.conflict.end(),
                     [](const Fact& rule) { return rule.code == "ruled_out"; });
}

void refuse_none(const Inputs& inputs, const ConnectionPlan& plan, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const chain::NoChain& none = *plan.none();
  Finding refusal{Topic::connections, fact("connection_has_no_chain", plan.name, none.reason), {}, {}};
  const auto nearest = none.nearest_above ? none.nearest_above : none.nearest_below;
  if (none.only_the_distance && nearest) refusal.numbers = Against{*plan.gap, *nearest};
  if (none.special_order) {
    refusal.mend = fact("order_one_part_specially", part_title(catalog, *none.special_order), plan.name);
  } else if (none.missing_part) {
    refusal.mend = fact("one_part_would_complete_it", *none.missing_part);
  } else if (!none.mends.empty()) {
    refusal.mend = none.mends.front();
  }
  if (plan.missed_bore && plan.missed_bore->longer_gap) {
    refusal.numbers = Against{*plan.gap, *plan.missed_bore->longer_gap};
    refusal.mend = fact("gap_for_a_wide_run", *plan.missed_bore->longer_gap);
    if (auto higher = higher_table(inputs.job, plan)) refusal.or_else = {std::move(*higher)};
  }
  if (plan.tight_hose) {
    refusal.numbers = Against{*plan.gap, plan.tight_hose->least_gap};
    refusal.mend = plan.tight_hose->mend;
    if (auto higher = higher_table(inputs.job, plan)) refusal.or_else = {std::move(*higher)};
  }
  if (auto mend = fitters_mend(catalog, plan.request.needs, none.reason, refusal.mend)) refusal.mend = std::move(*mend);
  if (const JobPort* port = port_of_plastic_alone(inputs, plan);
      port != nullptr && none.reason.code == "ruled_out_alone") {
    refusal.reason = fact("plastic_port_on_the_reservoir", plan.name, port->name, catalog.written(port->type));
    refusal.mend = fact("port_with_a_pipe_thread", port->name, catalog.size_name(catalog.port_type(port->type).size));
  }
  if (const chain::Need* plastic = plastic_need(catalog, plan.request);
      plastic != nullptr && clashes_with_plastic(none)) {
    refusal.reason = fact("plastic_asked_for_on_the_reservoir", plan.name, plastic->words);
    refusal.mend = fact("metal_in_its_place", plastic->words, plan.name);
  }
  const bool alone = none.reason.code == "air_alone" || none.reason.code == "ruled_out_alone";
  if (alone && plan.ends_in && !catalog.part(*plan.ends_in).air)
    refusal.mend = fact("metal_end_in_its_place", catalog.part(*plan.ends_in).name);
  // No check valve that would go there is advised where none may stand.
  if (is_asked_as_vent(catalog, inputs.job, plan) && asked_check(catalog, plan) != nullptr)
    refusal.mend = fact("take_check_valve_out");
  change_for_special_order(plan.name, refusal);
  remarks.refuse(std::move(refusal));
}

void refuse_unbuildable(const ConnectionPlan& plan, Remarks& remarks) {
  if (plan.chain()->buildable) return;
  remarks.refuse(
      {Topic::connections, fact("connection_cannot_be_built", plan.name), {}, fact("let_an_end_turn_or_add_union")});
}

void miss_the_bore(ConnectionPlan& plan) {
  plan.missed_bore = MissedBore{*plan.request.smallest_bore, kLeastShareOfRiserBore, {}};
  plan.request.smallest_bore.reset();
}

/// Unless the job says otherwise, the run from the riser to the table is not necked down far below the riser: the
/// cheapest fittings are often the smallest. Where nothing wider can be had, that is said first.
void keep_the_run_wide(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, const JobConnection& connection,
                       ConnectionPlan& plan, Remarks& remarks) {
  const std::vector<JobPort>& table = inputs.job.table.ports;
  const bool at_riser = plan.from == riser.bung || plan.to == riser.bung;
  const bool at_table = port_named(table, plan.from) != nullptr || port_named(table, plan.to) != nullptr;
  const bool is_main = plan.service == Service::water && at_riser && at_table && !connection.smallest_bore;
  if (!is_main) return;
  plan.request.smallest_bore = riser.request.pipe.bore * kLeastShareOfRiserBore;
  if (search.can_join(plan.request, plan.span)) {
    remarks.assume(fact("smallest_bore", connection.name, *plan.request.smallest_bore, kLeastShareOfRiserBore),
                   key_of(inputs.job, connection, "smallest bore"));
  } else {
    miss_the_bore(plan);
  }
}

/// The first gap, by half inches, that the run has room in; nullopt: none up to that much more.
std::optional<Length> gap_with_room(RunSearch& search, const chain::ChainRequest& request, const chain::Span& span) {
  const Length step = inches(0.5);
  chain::Span longer = span;
  for (longer.along = step * std::ceil((span.along / step).value()); longer.along <= span.along + kMostLonger;
       longer.along += step)
    if (search.can_join(request, longer)) return longer.along;
  return std::nullopt;
}

/// What the run was to have and has not stands before all else that is said of it, with what would mend it.
void say_what_is_missed(RunSearch& search, ConnectionPlan& plan) {
  chain::Run* run = std::get_if<chain::Run>(&plan.answer);
  if (!plan.missed_bore || run == nullptr) return;
  MissedBore& missed = *plan.missed_bore;
  chain::ChainRequest ordered = plan.request;
  ordered.smallest_bore = missed.least;
  chain::ChainRequest special = ordered;
  special.special_order = true;
  const bool is_sold = search.can_join(special, plan.span);
  const auto longer = !is_sold && plan.span ? gap_with_room(search, ordered, *plan.span) : std::nullopt;
  missed.longer_gap = longer;
  missed.mend = is_sold  ? fact("let_it_take_special_order")
                : longer ? fact("longer_gap_or_least_bore_of_its_own", *longer)
                         : fact("wider_port_or_least_bore_of_its_own");
  run->kept.insert(run->kept.begin(), fact("below_the_least_bore", missed.least, missed.share_of_riser));
}

/// What is asked for a connection, and what of the bin it may want.
chain::Demand ask(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, const JobConnection& connection,
                  ConnectionPlan& plan, Remarks& remarks) {
  plan.name = connection.name;
  plan.from = connection.from;
  plan.to = connection.to;
  plan.service = settle_service(inputs, connection, remarks);
  plan.request = request_for(inputs, connection, plan.service, remarks);
  plan.gap = gap_between(inputs.job, riser, connection, plan.gap_assumed, remarks);
  plan.answer = chain::NoChain{};
  chain::Demand demand;
  if (connection.ends_in) {
    demand.ends = device_ends(
        inputs.catalog, inputs.job.bin,
        proved_devices(
            inputs.catalog,
            at_home_beside(inputs.catalog, *find_port(inputs.job, connection.from), connection.ends_in->parts), plan));
    plan.request.to = demand.ends.front().end;
  } else {
    plan.request.to = end_at(inputs.job, connection, connection.to, connection.to_freedom, remarks);
    plan.span = span_of(search.finder(), connection, plan);
    keep_the_run_wide(inputs, search, riser, connection, plan, remarks);
  }
  plan.request.taken = connection.take;
  keep_swing_checks_from_falling_flow(inputs, plan);
  demand.request = plan.request;
  demand.span = plan.span;
  return demand;
}

void settle(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, const JobConnection& connection,
            ConnectionPlan& plan, Remarks& remarks) {
  if (plan.branched) return settle_branches(inputs, plan, remarks);
  if (plan.ends_in) plan.to = part_title(inputs.catalog, *plan.ends_in);
  plan.ends = {plan.to};
  if (plan.chain() == nullptr) {
    if (plan.none()->only_the_distance && plan.missed_bore && plan.span) {
      chain::ChainRequest ordered = plan.request;
      ordered.smallest_bore = plan.missed_bore->least;
      plan.missed_bore->longer_gap = gap_with_room(search, ordered, *plan.span);
    }
    if (plan.none()->only_the_distance) plan.tight_hose = tight_hose(search.finder(), connection, plan);
    refuse_none(inputs, plan, remarks);
    return;
  }
  refuse_unbuildable(plan, remarks);
  plan.cautions.insert(plan.cautions.end(), plan.chain()->cautions.begin(), plan.chain()->cautions.end());
  settle_hose(inputs, search.finder(), riser, connection, plan, remarks);
  count_clamps(inputs.catalog, plan);
  check_gap(inputs, search, plan, connection);
  if (const auto hose = hose_on_last(inputs.catalog, plan); hose && !hose->bends_on)
    plan.cautions.push_back(fact("hose_not_bent_on", part_title(inputs.catalog, hose->hose), hose->free));
}

/// The bin that the connection is asked with.
void use_bin(const Bin& bin, ConnectionPlan& plan) {
  plan.request.bin = bin;
  if (plan.branched) plan.branched->rules.bin = bin;
}

/// The device that the one end was asked to have.
void put_device(const Catalog& catalog, const chain::EndPart& chosen, bool from_bin, ConnectionPlan& plan) {
  plan.ends_in = chosen.part;
  plan.request.to = chosen.end;
  chain::Run* run = std::get_if<chain::Run>(&plan.answer);
  if (run == nullptr) return;
  const std::vector<catalog::Port>& ports = catalog.part(chosen.part).ports;
  const auto port =
      std::find_if(ports.begin(), ports.end(), [&](const catalog::Port& each) { return each.type == chosen.end.type; });
  run->ends.front().device = chosen.part;
  run->ends.front().device_port = static_cast<std::uint8_t>(port - ports.begin());
  run->ends.front().from_bin = from_bin;
}

void take_from_bin(const chain::Run& run, BinLeft& left) {
  for (const chain::RunPart& part : run.parts) {
    for (int piece = 0; part.from_bin && piece < part.pieces; ++piece) left.take(part.part);
    for (const chain::Follower& plug : part.plugs())
      if (plug.from_bin) left.take(plug.plug);
  }
  for (const chain::RunEnd& end : run.ends)
    if (end.device && end.from_bin) left.take(*end.device);
}

/// What nothing was found for is asked again with what is left: the answer says why there is none.
void ask_again(const Inputs& inputs, RunSearch& search, const JobConnection& connection, const chain::Demand& demand,
               BinLeft& left, ConnectionPlan& plan) {
  const auto set = [&](auto answer) { std::visit([&](auto& found) { plan.answer = std::move(found); }, answer); };
  if (!connection.smallest_bore && !connection.take && !plan.branched && plan.request.smallest_bore)
    miss_the_bore(plan);
  use_bin(left.bin(), plan);
  if (plan.branched)
    set(search.find_assembly(*plan.branched));
  else
    set(search.find(plan.request, plan.span));
  if (!demand.ends.empty()) put_device(inputs.catalog, demand.ends.front(), false, plan);
  if (plan.run() != nullptr) take_from_bin(*plan.run(), left);
}

/// What the sharing of the bin gave the connection, and what all of them left; its request may be asked again with
/// that.
void take_share(const Inputs& inputs, const chain::Demand& demand, const chain::Allotment& got, const Bin& left,
                ConnectionPlan& plan) {
  Bin bin = got.given;
  for (const catalog::BinItem& item : left.items) bin.add(item.part, item.count);
  plan.answer = *got.run;
  if (got.end) put_device(inputs.catalog, demand.ends[*got.end], got.end_from_bin, plan);
  if (got.end_from_bin) bin.take(*plan.ends_in);
  use_bin(bin, plan);
}

/// The row that carries the water from the riser to the table.
bool is_way_to_table(const Job& job, const RiserPlan& riser, const ConnectionPlan& plan) {
  const bool reaches_table =
      port_named(job.table.ports, plan.from) != nullptr || port_named(job.table.ports, plan.to) != nullptr;
  const bool at_riser = plan.from == riser.bung || plan.to == riser.bung;
  return plan.service == Service::water && reaches_table && at_riser && !plan.branched;
}

}  // namespace

AskedConnections ask_connections(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, Remarks& remarks) {
  AskedConnections asked;
  for (const bool branched : {false, true}) {
    for (const JobConnection& connection : inputs.job.connections) {
      if (connection.branches.empty() == branched) continue;
      asked.of.push_back(&connection);
      ConnectionPlan& plan = asked.plans.emplace_back();
      asked.demands.push_back(branched ? ask_branches(inputs, connection, plan, remarks)
                                       : ask(inputs, search, riser, connection, plan, remarks));
    }
  }
  return asked;
}

Connections plan_connections(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, AskedConnections asked,
                             const BinShares& shares, Remarks& remarks) {
  Connections done{std::move(asked.plans), std::nullopt, shares.left};
  for (std::size_t i = 0; i < done.plans.size(); ++i) {
    const chain::Allotment& got = shares.connections[i];
    if (got.met)
      take_share(inputs, asked.demands[i], got, done.left.bin(), done.plans[i]);
    else
      ask_again(inputs, search, *asked.of[i], asked.demands[i], done.left, done.plans[i]);
  }
  note_sharing(inputs, shares, remarks);
  for (std::size_t i = 0; i < done.plans.size(); ++i) {
    ConnectionPlan& plan = done.plans[i];
    leave_valve_with_reservoir(inputs, search.finder(), plan);
    say_what_is_missed(search, plan);
    settle(inputs, search, riser, *asked.of[i], plan, remarks);
    judge_mounting(inputs, plan, remarks);
    if (!done.water && is_way_to_table(inputs.job, riser, plan)) done.water = i;
  }
  return done;
}

}  // namespace riserun::plan
