// What a fitter is told of a run that makes a distance: what to cut, and how elbows must look.
#pragma once

#include "chain/result.h"

#include <string>

namespace riserun::chain {

/// Steps at the bench, before any other, for the pieces that are cut to measure.
void add_cutting_steps(const Catalog& catalog, Chain& chain);
/// Says in the build order how each bend must come to look. A taper thread can be set only within its last turn and
/// is never backed off (common practice).
void add_facing(const Catalog& catalog, Chain& chain);

/// "13-7/16 in (341 mm)".
std::string tape_length(Length length);

}  // namespace riserun::chain
