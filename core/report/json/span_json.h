// How a chain makes a distance between two ports, as JSON.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/answer.h"

#include <nlohmann/json_fwd.hpp>

namespace riserun::report {

/// The span: lengths in metres, plus for too long.
/// @pre the chain has a span
nlohmann::ordered_json span_json(const catalog::Catalog& catalog, const chain::Chain& chain);

}  // namespace riserun::report
