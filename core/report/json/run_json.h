// A run, a chain or a branched assembly, as JSON.
#pragma once

#include "chain/ask/run.h"
#include "quantity/write.h"

#include <nlohmann/json_fwd.hpp>

namespace riserun::report {

/// Rows of parts and ends count from 0. What only a run with one end has (the way on through each part, its length and
/// head) is left out where there are several. SI numbers with the unit in the key.
/// @param flow   that its head is of
/// @param units  of the sentences beside the facts
nlohmann::ordered_json run_json(const catalog::Catalog& catalog, const chain::Run& run, VolumeFlow flow,
                                UnitSystem units);

}  // namespace riserun::report
