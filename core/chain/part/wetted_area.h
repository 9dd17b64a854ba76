// Galvanic pairs weighed by the areas that the water wets.
#pragma once

#include "chain/ask/request.h"

namespace riserun::chain {

/// Area that the part wets between two ports: its mean bore round, times the length of its body.
Area wetted_area(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave);

enum class AreaEffect { none, worse, milder };

/// What the areas do to the metal that corrodes. A small anode beside a large cathode is eaten fast, a large one beside
/// a small cathode slowly: worse from ten times the anode's area on, milder up to a tenth of it (common practice).
///
/// @param anode    of the metal that corrodes; infinite: a vessel's wall; zero: not known
AreaEffect effect_of_areas(Area anode, Area cathode);

}  // namespace riserun::chain
