// What a fitter is told to cut for a run that makes a distance.
#pragma once

#include "chain/ask/answer.h"

#include <string>

namespace riserun::chain {

/// Steps at the bench, before any other, for the pieces that are cut to measure.
void add_cutting_steps(const Catalog& catalog, Chain& chain);
/// "13-7/16 in (341 mm)".
std::string tape_length(Length length);

}  // namespace riserun::chain
