// The run that a person has chosen, where it must make a distance.
#pragma once

#include "chain/span/best_span.h"

#include <optional>

namespace riserun::chain {

/// The best that the parts of ChainRequest::taken can do for the distance in their order: by the rule of best_span,
/// with its pieces cut to measure. nullopt: the rules do not let the run in, or it does not make the distance.
///
/// A run of more than eight parts counts as made only where the best of just these parts comes out in that order.
///
/// @pre request.taken
std::optional<SpanChoice> taken_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

}  // namespace riserun::chain
