// Which side of the valve a connection opens on: the valve stays with the reservoir when the run is opened.
#include "plan/stage/valves.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

using chain::Chain;
using chain::ReservoirEnd;
using quantity::fact;

std::optional<ReservoirEnd> reservoir_end(const Job& job, const ConnectionPlan& plan) {
  const std::vector<JobPort>& ports = job.reservoir.ports;
  if (port_named(ports, plan.from) != nullptr) return ReservoirEnd::first;
  if (port_named(ports, plan.to) != nullptr) return ReservoirEnd::last;
  return std::nullopt;
}

std::vector<PartId> from_bin(const Chain& chain) {
  std::vector<PartId> parts;
  for (const chain::RunPart& link : chain.parts) {
    if (link.from_bin) parts.push_back(link.part);
    for (const chain::Follower& plug : link.plugs())
      if (plug.from_bin) parts.push_back(plug.plug);
  }
  std::sort(parts.begin(), parts.end());
  return parts;
}

/// Nothing of the job changes but the order of the run: as dear, as many parts, and the same of the bin.
bool is_as_good(const Chain& one, const Chain& other) {
  return one.part_count == other.part_count && one.buy_count == other.buy_count && one.price == other.price &&
         from_bin(one) == from_bin(other);
}

quantity::Facts cost_of_it(const Chain& now, const Chain& right) {
  quantity::Facts cost;
  if (now.part_count < right.part_count) cost.push_back(fact("parts_more", right.part_count - now.part_count));
  if (right.part_count < now.part_count) cost.push_back(fact("parts_fewer", now.part_count - right.part_count));
  if (now.price.without_price() != right.price.without_price())
    cost.push_back(fact("parts_without_price"));
  else if (now.price < right.price)
    cost.push_back(fact("price_more", right.price - now.price));
  else if (right.price < now.price)
    cost.push_back(fact("price_less", now.price - right.price));
  if (cost.empty()) cost.push_back(fact("other_parts_of_the_bin"));
  return cost;
}

void caution(const Catalog& catalog, ConnectionPlan& plan, ReservoirEnd end, const chain::ValveAndOpening& pair,
             const std::optional<Chain>& right) {
  const std::string& port = end == ReservoirEnd::first ? plan.from : plan.to;
  const std::string opening = chain::opening_beyond_valve(catalog, plan.request, end);
  const quantity::Fact ask = fact(end == ReservoirEnd::first ? "ask_valve_first" : "ask_opening_first", opening);
  quantity::Fact mend = fact("drain_before_you_open");
  if (plan.request.needs_in_order || plan.request.taken)
    mend = fact("beyond_the_valve", opening, ask);
  else if (right)
    mend = fact("beyond_the_valve_it_takes", opening, cost_of_it(*plan.chain(), *right), ask);
  plan.cautions.push_back(fact("valve_comes_off", pair.opening, port, catalog.part(pair.valve).name, std::move(mend)));
}

}  // namespace

void leave_valve_with_reservoir(const Inputs& inputs, const chain::Finder& finder, ConnectionPlan& plan) {
  const auto end = reservoir_end(inputs.job, plan);
  if (!end || plan.chain() == nullptr) return;
  const auto pair = chain::valve_that_comes_off(inputs.catalog, plan.request, *plan.chain(), *end);
  if (!pair) return;
  // An order or a run that was asked for stays.
  const bool stays = plan.request.needs_in_order || plan.request.taken;
  auto right = stays ? std::nullopt : finder.best_with_valve_left(plan.request, *end, plan.span);
  if (right && is_as_good(*plan.chain(), *right)) {
    right->ends = plan.chain()->ends;  // with the device, where one stands there
    plan.answer = std::move(*right);
  } else {
    caution(inputs.catalog, plan, *end, *pair, right);
  }
}

}  // namespace riserun::plan
