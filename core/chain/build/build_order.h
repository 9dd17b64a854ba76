// The order in which a fitter makes a run up, joint by joint: from each held end inwards, each body that is added still
// free to turn, and the closing joint last.
#pragma once

#include "chain/ask/run.h"

namespace riserun::chain {

/// Fills steps and buildable of a run whose parts, joints and ends are known, and says in its
/// cautions where the last joint needs play that neither end has.
void add_build_order(const Catalog& catalog, Run& run);

}  // namespace riserun::chain
