// The order in which a fitter makes a chain up, joint by joint: from each held end inwards, each body that is added
// still free to turn, and the closing joint last.
#pragma once

#include "chain/ask/answer.h"

namespace riserun::chain {

/// Fills steps, buildable and not_buildable_because of a chain whose parts and joints are known.
void add_build_order(const Catalog& catalog, const ChainRequest& request, Chain& chain);

}  // namespace riserun::chain
