// The one check of what is asked, before any search.
#pragma once

#include "chain/ask/assembly.h"

namespace riserun::chain {

/// @throws InputError for too few or too many targets, another order or another freedom than AssemblyRequest allows
void check(const AssemblyRequest& request);

}  // namespace riserun::chain
