#include "chain/refusal/cheapest_purchase.h"

#include "chain/build/assemble.h"
#include "chain/search/best_chain.h"

namespace riserun::chain {

std::vector<PartId> cheapest_purchase(const FoldedCatalog& folded, const ChainRequest& request) {
  ChainRequest again = request;
  again.not_sold.clear();
  again.order = Order::price;
  GraphExtras extras;
  extras.purchase_is_wish = true;
  const std::optional<Route> route = best_chain(folded, again, extras);
  if (!route) return {};
  return bought_parts(assemble(folded.catalog(), again, route->moves));
}

}  // namespace riserun::chain
