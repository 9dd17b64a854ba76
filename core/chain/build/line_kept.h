// What a run keeps of its line's size and kind, in facts.
#pragma once

#include "chain/ask/run.h"

namespace riserun::chain {

/// One line's worth of facts, what could not be kept first: where the run is narrower than its line (the smaller of the
/// two ends), which kinds of joint it takes that neither end has; and what it keeps. With several ends way by way.
///
/// @param is_best  the run is the best by the order: what it does not keep, nothing else that may be used keeps
quantity::Facts line_kept(const Catalog& catalog, const ChainRequest& request, const Run& run, bool is_best);

/// They tell of nothing that is not kept.
bool keeps_all(const quantity::Facts& kept);

}  // namespace riserun::chain
