// Turns a tree of moves into the assembly that is shown: parts, joints, sums, build order, cautions.
#pragma once

#include "chain/tree/best_tree.h"

namespace riserun::chain {

Assembly assemble_branches(const Catalog& catalog, const AssemblyRequest& request, const BranchTree& tree);

/// Fills the cautions of an assembly whose parts and joints are known: those of each branch, seen as the chain that it
/// is.
void add_branch_cautions(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly);

/// Fills the steps of an assembly whose parts and joints are known.
void add_branch_build_order(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly);

}  // namespace riserun::chain
