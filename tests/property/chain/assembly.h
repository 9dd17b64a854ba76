// Carries a build order out, step by step, on bodies that may or may not turn. Knows nothing of the solver.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/request.h"

#include <string>

namespace riserun::chain::testing {

/// The step as a fitter reads it.
std::string text_of(const BuildStep& step);

/// Empty when each step can be done and the run is whole at the end; else what goes wrong first.
std::string carry_out(const Catalog& catalog, const ChainRequest& request, const Chain& chain);

}  // namespace riserun::chain::testing
