// The bin: one allocation over the connections, the riser and the plugs of the leak test.
#include "chain/finder.h"
#include "plan/stage/drafting.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

using chain::Allotment;
using chain::Demand;
using chain::Order;

/// Whom a demand is for.
enum class For { connection, riser, plug };

struct Asked {
  For whom = For::connection;
  std::size_t row = 0;  // of the connections or of the plugs
  Demand demand;
  Order order = Order::parts;
};

std::vector<Asked> all_demands(Draft& draft, const std::vector<Demand>& connections) {
  std::vector<Asked> asked;
  for (std::size_t i = 0; i < connections.size(); ++i)
    asked.push_back({For::connection, i, connections[i], connections[i].request->order});
  asked.push_back({For::riser, 0, {std::nullopt, riser_stock(draft)}, draft.settled.order});
  if (asked.back().demand.ends.empty()) asked.pop_back();
  for (const JobPort* port : ports_to_plug(draft)) {
    draft.test_plugs.push_back({port->name, std::nullopt, false});
    Demand demand{std::nullopt, closing_parts(draft, port->type)};
    if (!demand.ends.empty())
      asked.push_back({For::plug, draft.test_plugs.size() - 1, std::move(demand), draft.settled.order});
  }
  return asked;
}

/// The job's own order, then the others as the connections name them.
std::vector<Order> orders_of(const Draft& draft, const std::vector<Asked>& asked) {
  std::vector<Order> orders{draft.settled.order};
  for (const Asked& one : asked)
    if (std::find(orders.begin(), orders.end(), one.order) == orders.end()) orders.push_back(one.order);
  return orders;
}

void give(Draft& draft, const Asked& asked, const Allotment& got, std::optional<PartId>& riser_from_bin) {
  if (asked.whom == For::connection) {
    ConnectionPlan& plan = draft.plan.connections[asked.row];
    plan.request.bin = got.given;
    if (!got.met) return;
    plan.answer = *got.chain;
    if (!got.end) return;
    plan.ends_in = asked.demand.ends[*got.end].part;
    plan.ends_in_from_bin = got.end_from_bin;
    for (catalog::BinItem& item : plan.request.bin.items)
      if (got.end_from_bin && item.part == *plan.ends_in) --item.count;
    plan.request.to = asked.demand.ends[*got.end].end;
  } else if (got.met && asked.whom == For::riser) {
    if (got.end_from_bin) riser_from_bin = asked.demand.ends[*got.end].part;
  } else if (got.met) {
    TestPlug& plug = draft.test_plugs[asked.row];
    plug.part = asked.demand.ends[*got.end].part;
    plug.from_bin = got.end_from_bin;
  }
}

/// What nothing was found for is asked again with what is left: the answer says why there is none.
void ask_again(Draft& draft, const chain::Finder& finder, const JobConnection& connection, const Demand& demand,
               ConnectionPlan& plan) {
  if (!connection.smallest_bore) plan.request.smallest_bore.reset();
  plan.request.bin = draft.bin.bin();
  plan.answer = plan.span ? finder.find_span(plan.request, *plan.span) : finder.find(plan.request);
  if (!demand.ends.empty()) plan.ends_in = demand.ends.front().part;
  if (plan.chain() == nullptr) return;
  for (const chain::ChainPart& part : plan.chain()->parts) {
    for (int piece = 0; part.from_bin && piece < part.pieces; ++piece) draft.bin.take(part.part);
    for (std::size_t i = 0; i < part.plugs.size(); ++i)
      if (part.plug_from_bin[i]) draft.bin.take(part.plugs[i]);
  }
}

void tell(Draft& draft, const std::vector<PartId>& contested, bool several_orders) {
  if (draft.plan.job.bin.items.empty()) return;
  std::string text =
      "The bin is shared over the whole job at once, riser and plugs of the leak test with it: a part is free only as "
      "often as it is there, and no other way to share it is better for the job.";
  if (several_orders)
    text += " Connections with an order of their own come after those that go by the order of the job.";
  draft.note(Topic::list, text);
  if (contested.empty()) return;
  std::string names;
  for (const PartId part : contested) names += (names.empty() ? "" : "; ") + part_title(draft.catalog(), part);
  draft.note(Topic::list, fmt::format("More is wanted of these than the bin has: {}.", names));
}

}  // namespace

void share_bin(Draft& draft, const chain::Finder& finder, const std::vector<Demand>& demands) {
  const std::vector<Asked> asked = all_demands(draft, demands);
  const std::vector<Order> orders = orders_of(draft, asked);
  std::optional<PartId> riser_from_bin;
  std::vector<PartId> contested;
  for (const Order order : orders) {
    std::vector<Asked> now;
    std::copy_if(asked.begin(), asked.end(), std::back_inserter(now), [&](const Asked& a) { return a.order == order; });
    std::vector<Demand> wanted;
    for (const Asked& one : now) wanted.push_back(one.demand);
    const chain::Allocation allocation = finder.allocate(wanted, draft.bin.bin(), order);
    for (std::size_t i = 0; i < now.size(); ++i) {
      give(draft, now[i], allocation.of[i], riser_from_bin);
      draft.bin.take(allocation.of[i].given);
    }
    for (const PartId part : allocation.proof.contested)
      if (std::find(contested.begin(), contested.end(), part) == contested.end()) contested.push_back(part);
  }
  settle_riser_stock(draft, riser_from_bin);
  std::vector<const JobConnection*> runs;
  for (const JobConnection& connection : draft.plan.job.connections)
    if (connection.branches.empty()) runs.push_back(&connection);
  for (std::size_t i = 0; i < demands.size(); ++i) {
    ConnectionPlan& plan = draft.plan.connections[i];
    if (plan.chain() == nullptr) {
      ask_again(draft, finder, *runs[i], demands[i], plan);
      continue;
    }
    for (const catalog::BinItem& left : draft.bin.bin().items)
      for (catalog::BinItem& item : plan.request.bin.items)
        if (item.part == left.part) item.count += left.count;
  }
  tell(draft, contested, orders.size() > 1);
}

}  // namespace riserun::plan
