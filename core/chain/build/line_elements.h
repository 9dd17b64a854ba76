// A chain as a line for the hydraulics, and the narrowest place of a way.
#pragma once

#include "chain/ask/run.h"
#include "hydraulics/line.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// The chain's elements, from its first part to its last.
std::vector<hydraulics::LineElement> line_elements(const Catalog& catalog, const Chain& chain);

/// The smallest bore on the way through a part; nullopt: none is known.
std::optional<Length> bore_of_part(const Catalog& catalog, const RunPart& link);

/// The smallest bore on the way to an end, the device there left out; nullopt: there is no part, or no bore is known.
std::optional<Length> bore_of_way(const Catalog& catalog, const Run& run, std::size_t end);

}  // namespace riserun::chain
