// Other runs than the best one that make a distance: each chain of alternatives() is asked for by its own parts
// (best_span), so that it is one search each.
#pragma once

#include "chain/answers/alternatives.h"

namespace riserun::chain {

/// The best run that makes the distance, as span_run has it, then every other chain of alternatives() whose parts make
/// the distance too, cut to it, in the order of alternatives(): with the length, the price and the head that it has
/// there. Of parts that make it in several ways, the best way. Where an end moves along its axis, alternatives()
/// themselves.
///
/// @param most_rows  > 0
/// @return empty: nothing makes the distance
std::vector<Alternative> span_alternatives(const PreparedCatalog& prepared, const ChainRequest& request,
                                           const Span& span, std::size_t most_rows);

}  // namespace riserun::chain
