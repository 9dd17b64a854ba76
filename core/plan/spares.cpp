#include "plan/spares.h"

#include "chain/finder.h"

namespace riserun::plan {

namespace {

const std::size_t kMostForOnePart = 2;

}  // namespace

chain::Spares spares_for(const Plan& plan) {
  const chain::Finder finder(*plan.catalog);
  std::vector<chain::Chosen> chosen;
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < plan.connections.size(); ++i) {
    const chain::Chain* chain = plan.connections[i].chain();
    if (chain == nullptr || plan.connections[i].span) continue;  // a stand-in would have to make the distance too
    chosen.push_back({plan.connections[i].request, *chain});
    rows.push_back(i);
  }
  chain::Spares spares = finder.least_spares(chosen, kMostForOnePart);
  for (chain::StockOut& out : spares.stock_outs) out.chosen = rows[out.chosen];
  return spares;
}

}  // namespace riserun::plan
