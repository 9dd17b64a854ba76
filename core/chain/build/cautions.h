// What a fitter must be told beside a run: metals that do not suit, valves that stop the drain, weak or awkward parts.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/ask/run.h"

namespace riserun::chain {

/// Adds the cautions of a run whose parts, joints and ends are known: those of the way to each end, each said once.
void add_cautions(const Catalog& catalog, Service service, Run& run);

/// Adds that the way to an end is narrower than the end: a relief valve there must not be fed through less than its
/// inlet (ASME BPVC section VIII division 1, UG-135, from memory).
void add_caution_of_narrow_ways(const Catalog& catalog, Run& run);

/// Of an assembly: targets that are not beyond a part which acts on what is (a regulator, a valve) and was asked for as
/// a whole's, not as a branch's own.
void add_caution_of_targets_not_behind(const Catalog& catalog, const AssemblyRequest& request, Run& run);

}  // namespace riserun::chain
