// How a chain makes a distance between two ports, as JSON.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/answer.h"

#include <string>

namespace riserun::report {

/// The JSON text of the span: lengths in metres, plus for too long.
/// @pre the chain has a span
std::string span_object(const catalog::Catalog& catalog, const chain::Chain& chain);

}  // namespace riserun::report
