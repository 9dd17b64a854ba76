#include "plan/stage/bin.h"

#include "plan/stage/leak_test.h"

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
  Order order = Order::line;
};

/// What a plug goes into while the tank is tested: of a riser that is let down in its bushing afterwards the wider
/// coupling's own thread, so that the bushing is made up once (common practice).
PortTypeId thread_to_plug(const Catalog& catalog, const JobPort& port, const RiserPlan& riser) {
  const bool waits = port.bung == reservoir::BungKind::double_tapped_bushing && port.name == riser.bung &&
                     riser.riser.insertion == reservoir::Insertion::through_the_bung;
  if (!waits || !riser.bushing || !riser.bushing->coupling) return port.type;
  return catalog.part(*riser.bushing->coupling).ports[0].type;
}

std::vector<Asked> all_demands(const Inputs& inputs, const std::vector<Demand>& connections, const MeasuredRiser& riser,
                               const std::vector<const JobPort*>& to_plug) {
  std::vector<Asked> asked;
  for (std::size_t i = 0; i < connections.size(); ++i)
    asked.push_back({For::connection, i, connections[i],
                     (connections[i].branched ? connections[i].branched->rules : *connections[i].request).order});
  Demand stock{std::nullopt, riser_stock(inputs.catalog, riser)};
  if (!stock.ends.empty()) asked.push_back({For::riser, 0, std::move(stock), inputs.settled.order});
  for (std::size_t i = 0; i < to_plug.size(); ++i) {
    Demand plug{std::nullopt, closing_parts(inputs, thread_to_plug(inputs.catalog, *to_plug[i], riser.plan))};
    if (!plug.ends.empty()) asked.push_back({For::plug, i, std::move(plug), inputs.settled.order});
  }
  return asked;
}

/// The job's own order, then the others as the connections name them.
std::vector<Order> orders_of(Order of_job, const std::vector<Asked>& asked) {
  std::vector<Order> orders{of_job};
  for (const Asked& one : asked)
    if (std::find(orders.begin(), orders.end(), one.order) == orders.end()) orders.push_back(one.order);
  return orders;
}

void give(const Asked& asked, const Allotment& got, BinShares& shares) {
  if (asked.whom == For::connection) {
    shares.connections[asked.row] = got;
  } else if (got.met && asked.whom == For::riser) {
    if (got.end_from_bin) shares.riser = asked.demand.ends[*got.end].part;
  } else if (got.met) {
    TestPlug& plug = shares.plugs[asked.row];
    plug.part = asked.demand.ends[*got.end].part;
    plug.from_bin = got.end_from_bin;
  }
}

}  // namespace

BinShares share_bin(const Inputs& inputs, RunSearch& search, const std::vector<Demand>& connections,
                    const MeasuredRiser& riser, const std::vector<const JobPort*>& to_plug) {
  const std::vector<Asked> asked = all_demands(inputs, connections, riser, to_plug);
  const std::vector<Order> orders = orders_of(inputs.settled.order, asked);
  BinShares shares{std::vector<Allotment>(connections.size()), {}, {}, {}, orders.size() > 1, BinLeft(inputs.job.bin)};
  for (const JobPort* port : to_plug) shares.plugs.push_back({port->name, std::nullopt, false});
  for (const Order order : orders) {
    std::vector<Asked> now;
    std::copy_if(asked.begin(), asked.end(), std::back_inserter(now), [&](const Asked& a) { return a.order == order; });
    std::vector<Demand> wanted;
    for (const Asked& one : now) wanted.push_back(one.demand);
    const chain::Allocation allocation = search.allocate(wanted, shares.left.bin(), order);
    for (std::size_t i = 0; i < now.size(); ++i) {
      give(now[i], allocation.of[i], shares);
      shares.left.take(allocation.of[i].given);
    }
    for (const PartId part : allocation.proof.contested)
      if (std::find(shares.contested.begin(), shares.contested.end(), part) == shares.contested.end())
        shares.contested.push_back(part);
  }
  return shares;
}

void note_sharing(const Inputs& inputs, const BinShares& shares, Remarks& remarks) {
  if (inputs.job.bin.items.empty()) return;
  remarks.note(Topic::list, fact(shares.several_orders ? "bin_is_shared_by_order" : "bin_is_shared"));
  if (shares.contested.empty()) return;
  quantity::Texts names;
  for (const PartId part : shares.contested) names.push_back(part_title(inputs.catalog, part));
  remarks.note(Topic::list, fact("bin_is_short_of", names));
}

}  // namespace riserun::plan
