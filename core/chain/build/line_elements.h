// A chain as a line for the hydraulics.
#pragma once

#include "chain/ask/answer.h"
#include "hydraulics/line.h"

#include <vector>

namespace riserun::chain {

/// The chain's elements, from its first part to its last.
std::vector<hydraulics::LineElement> line_elements(const Catalog& catalog, const Chain& chain);

}  // namespace riserun::chain
