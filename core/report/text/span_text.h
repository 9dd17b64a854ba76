// How a chain makes a distance between two ports, as a fitter reads it.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/answer.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// "Spans 13-7/8 in: lands 1/16 in short; six joints give plus or minus 3/8 in (likely 3/16 in)." and what makes it:
/// pieces to cut, elbows with their travel, what a hose or an end that moves takes up. Sentences without line breaks.
/// @pre the chain has a span
std::string span_sentences(const catalog::Catalog& catalog, const chain::Chain& chain, quantity::UnitSystem units);

}  // namespace riserun::report
