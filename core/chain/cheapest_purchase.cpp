#include "chain/cheapest_purchase.h"

#include "chain/assemble.h"
#include "chain/best_route.h"

namespace riserun::chain {

std::vector<PartId> cheapest_purchase(const Network& network, const ChainRequest& request) {
  ChainRequest again = request;
  again.not_sold.clear();
  again.order = Order::bin;
  const std::optional<Route> route = best_route(network, again);
  if (!route) return {};
  return bought_parts(assemble(network.catalog(), again, route->moves));
}

}  // namespace riserun::chain
