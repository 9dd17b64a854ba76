// What to take when a part of a chain is not on the shelf and the rest of it lies in the cart.
#pragma once

#include "chain/network.h"
#include "chain/result.h"

namespace riserun::chain {

struct Substitute {
  PartId instead_of;
  std::optional<Chain> chain;    // as if nothing had been bought yet; nullopt: nothing on sale makes up for the part
  std::vector<PartId> buy_also;  // beyond the rest of the cart, in chain order; a part twice where two are needed
  std::vector<PartId> put_back;  // of the cart, what this chain has no use for
};

/// For each different part that the chain buys, in chain order: the best chain of the same request that buys none of
/// it. All else that the chain buys lies in the cart and is as good as in the bin. Fewest further purchases come first,
/// then the request's order, for which the cart is paid. What the bin has of the part stays usable.
///
/// @param chain  an answer to the request
std::vector<Substitute> shelf_empty(const Network& network, const ChainRequest& request, const Chain& chain);

}  // namespace riserun::chain
