// Why there is no branched assembly: the least set of targets that cannot be joined, and the smallest changes that mend
// it.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/graph/folded_catalog.h"

namespace riserun::chain {

/// @pre best_tree() of the same request found none
NoAssembly why_no_assembly(const FoldedCatalog& folded, const AssemblyRequest& request);

}  // namespace riserun::chain
