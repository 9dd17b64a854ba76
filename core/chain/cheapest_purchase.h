// What to buy where nothing may be bought and the bin alone does not make the chain.
#pragma once

#include "chain/network.h"
#include "chain/result.h"

namespace riserun::chain {

/// The fewest parts to buy, and the cheapest of those, that complete a chain of the request where some parts are not to
/// be had (`not_sold`); in chain order. Empty: nothing on sale completes one.
std::vector<PartId> cheapest_purchase(const Network& network, const ChainRequest& request);

}  // namespace riserun::chain
