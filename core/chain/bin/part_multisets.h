// Every chain of a request, as far as it matters which classes of parts it is made of.
#pragma once

#include "chain/bin/part_classes.h"

namespace riserun::chain {

/// Classes of parts with how many of each, by class.
using Pieces = std::vector<std::pair<std::uint32_t, int>>;

bool is_within(const Pieces& less, const Pieces& more);
int count_in(const Pieces& pieces);
/// What is in the first and, piece by piece, not among the counts.
Pieces beyond(const Pieces& pieces, const std::vector<int>& counts);

/// What the chains of the request are made of that need at most so many pieces beyond `there`: those of which no other
/// needs less. Plugs included.
///
/// @param there  by class: pieces at hand
std::vector<Pieces> part_multisets(const Rules& rules, const PartClasses& classes, const std::vector<int>& there,
                                   int most_beyond);

}  // namespace riserun::chain
