// Small random worlds with parts that branch, and what may be asked in them.
#pragma once

#include "property/chain/every_tree.h"
#include "property/chain/random_world.h"

#include <vector>

namespace riserun::chain::testing {

/// Parts with three and four ports and plugs, of port types that the catalog has.
catalog::Catalog with_branching_parts(const catalog::Catalog& base, Dice& dice);
/// Two to four targets; order parts.
AssemblyRequest random_assembly(Dice& dice, const catalog::Catalog& catalog);

/// An assembly as the judge has it; expects that it hangs together.
std::vector<TreeItem> as_list(const Assembly& assembly, const TreeTrial& trial);

}  // namespace riserun::chain::testing
