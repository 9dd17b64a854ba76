// What a fitter must be told beside a chain: metals that do not suit, valves that stop the drain, weak or awkward
// parts.
#pragma once

#include "chain/result.h"

namespace riserun::chain {

/// Fills the cautions of a chain whose parts and joints are known.
void add_cautions(const Catalog& catalog, const ChainRequest& request, Chain& chain);

}  // namespace riserun::chain
