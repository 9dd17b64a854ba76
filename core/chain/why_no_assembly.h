// Why there is no branched assembly: the least set of targets that cannot be joined, and the smallest changes that mend
// it.
#pragma once

#include "chain/branched.h"
#include "chain/network.h"

namespace riserun::chain {

/// @pre best_branches() of the same request found none
NoAssembly why_no_assembly(const Network& network, const AssemblyRequest& request);

}  // namespace riserun::chain
