// What the joints of a run use up that is no part of it: hose clamps, crimp rings, gaskets with their bolts.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/run.h"

namespace riserun::chain {

/// Fills Run::goods from its joints, the first of a kind first. Tape, solder and what else a joint takes by the length
/// or the lump is in every box, and left out.
void add_joint_goods(const Catalog& catalog, Run& run);

}  // namespace riserun::chain
