#include "chain/answers/order_instead.h"

#include "chain/build/line_kept.h"
#include "chain/search/best_chain.h"

namespace riserun::chain {

void add_order_instead(const PreparedCatalog& prepared, const ChainRequest& request, Chain& chain) {
  if (!keeps_the_line(request.order) || request.special_order || request.taken || keeps_all(chain.kept)) return;
  ChainRequest ordered = request;
  ordered.special_order = true;
  ordered.order = Order::line;
  const std::optional<Route> route = best_chain(prepared, ordered);
  if (!route || !keeps_size_and_kind(route->cost)) return;
  const Catalog& catalog = prepared.catalog();
  quantity::Texts names;
  const auto add = [&](PartId part) {
    if (!catalog.part(part).stocked && request.bin.count_of(part) == 0) names.push_back(catalog.part(part).name);
  };
  for (const Move& move : route->moves) {
    add(move.part);
    for (const PartId plug : move.plugs) add(plug);
  }
  if (!names.empty()) chain.kept.push_back(quantity::fact("or_order", std::move(names)));
}

}  // namespace riserun::chain
