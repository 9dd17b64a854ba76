#include "chain/answers/substitutes.h"

#include "chain/build/assemble.h"
#include "chain/search/best_chain.h"

#include <algorithm>

namespace riserun::chain {

namespace {

/// What is in the first and, piece by piece, not in the second.
std::vector<PartId> without(std::vector<PartId> parts, const std::vector<PartId>& taken) {
  for (const PartId part : taken) {
    const auto found = std::find(parts.begin(), parts.end(), part);
    if (found != parts.end()) parts.erase(found);
  }
  return parts;
}

Substitute substitute_for(const FoldedCatalog& folded, const ChainRequest& request, PartId part,
                          std::vector<PartId> cart) {
  std::erase(cart, part);
  ChainRequest again = request;
  again.not_sold.resize(folded.catalog().parts().size(), false);
  again.not_sold[part.row] = true;
  for (const PartId kept : cart) again.bin.add(kept);
  GraphExtras extras;
  extras.purchase_is_wish = true;
  Substitute answer{part, {}, {}, {}};
  const std::optional<Route> route = best_chain(folded, again, extras);
  if (!route) return answer;
  answer.chain = assemble(folded.catalog(), request, route->moves);
  const std::vector<PartId> bought = bought_parts(*answer.chain);
  answer.buy_also = without(bought, cart);
  answer.put_back = without(cart, bought);
  return answer;
}

}  // namespace

std::vector<Substitute> substitutes(const FoldedCatalog& folded, const ChainRequest& request, const Chain& chain) {
  const std::vector<PartId> cart = bought_parts(chain);
  std::vector<Substitute> found;
  for (const PartId part : cart) {
    const bool known =
        std::any_of(found.begin(), found.end(), [&](const Substitute& s) { return s.instead_of == part; });
    if (!known) found.push_back(substitute_for(folded, request, part, cart));
  }
  return found;
}

}  // namespace riserun::chain
