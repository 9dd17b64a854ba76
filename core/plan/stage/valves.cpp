// Which side of the valve a connection opens on: the valve stays with the reservoir when the run is opened.
#include "plan/stage/valves.h"

#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace riserun::plan {

namespace {

using chain::Chain;
using chain::ReservoirEnd;

std::optional<ReservoirEnd> reservoir_end(const Job& job, const ConnectionPlan& plan) {
  const std::vector<JobPort>& ports = job.reservoir.ports;
  if (port_named(ports, plan.from) != nullptr) return ReservoirEnd::first;
  if (port_named(ports, plan.to) != nullptr) return ReservoirEnd::last;
  return std::nullopt;
}

std::vector<PartId> from_bin(const Chain& chain) {
  std::vector<PartId> parts;
  for (const chain::ChainPart& link : chain.parts) {
    if (link.from_bin) parts.push_back(link.part);
    for (std::size_t i = 0; i < link.plugs.size(); ++i)
      if (link.plug_from_bin[i]) parts.push_back(link.plugs[i]);
  }
  std::sort(parts.begin(), parts.end());
  return parts;
}

/// Nothing of the job changes but the order of the run: as dear, as many parts, and the same of the bin.
bool is_as_good(const Chain& one, const Chain& other) {
  return one.part_count == other.part_count && one.buy_count == other.buy_count && one.price == other.price &&
         from_bin(one) == from_bin(other);
}

std::string cost_of_it(const Chain& now, const Chain& right) {
  const int parts = right.part_count - now.part_count;
  const Price price = now.price < right.price ? right.price - now.price : now.price - right.price;
  std::string text;
  if (parts != 0)
    text = fmt::format("{} part{} {}", std::abs(parts), std::abs(parts) == 1 ? "" : "s", parts > 0 ? "more" : "fewer");
  if (price != Price{})
    text += fmt::format("{}{} {}", text.empty() ? "" : " and ", write_price(price),
                        now.price < right.price ? "more" : "less");
  return text.empty() ? "other parts of the bin and no more money" : text;
}

void caution(const Catalog& catalog, ConnectionPlan& plan, ReservoirEnd end, const chain::ValveAndOpening& pair,
             const std::optional<Chain>& right) {
  const std::string& port = end == ReservoirEnd::first ? plan.from : plan.to;
  std::string text = fmt::format(
      "The {} is between the {} and the {}: once it is opened, the valve goes with the run and the reservoir stands "
      "open. ",
      pair.opening, port, catalog.part(pair.valve).name);
  const std::string opening = chain::opening_beyond_valve(catalog, plan.request, end);
  const std::string ask = fmt::format("ask for valve and {} in 'need', {} first, with 'in order: yes'.", opening,
                                      end == ReservoirEnd::first ? "the valve" : "the " + opening);
  if (plan.span || plan.request.needs_in_order)
    text += fmt::format("To have the {} beyond the valve, {}", opening, ask);
  else if (right)
    text +=
        fmt::format("With the {} beyond the valve it takes {}: {}", opening, cost_of_it(*plan.chain(), *right), ask);
  else
    text += "Drain the reservoir before you open it.";
  plan.cautions.push_back(std::move(text));
}

}  // namespace

void leave_valve_with_reservoir(const Inputs& inputs, const chain::Finder& finder, ConnectionPlan& plan) {
  const auto end = reservoir_end(inputs.job, plan);
  if (!end || plan.chain() == nullptr) return;
  const auto pair = chain::valve_that_comes_off(inputs.catalog, plan.request, *plan.chain(), *end);
  if (!pair) return;
  // A measured gap has its own search, and an order that was asked for stays.
  const bool stays = plan.span || plan.request.needs_in_order;
  const auto right = stays ? std::nullopt : finder.best_with_valve_left(plan.request, *end);
  if (right && is_as_good(*plan.chain(), *right))
    plan.answer = *right;
  else
    caution(inputs.catalog, plan, *end, *pair, right);
}

}  // namespace riserun::plan
