// A run that makes a distance, as the chain that is shown.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"
#include "chain/span/best_span.h"

#include <optional>

namespace riserun::chain {

/// The best chain that makes the distance (best_span), with its SpanFit. Where an end moves along its axis the distance
/// is only a guide: the best chain of all, and its fit says what the end takes up; but hose and tube in it are cut to
/// the distance, from the piece that is long enough, where a run that makes it is as good. nullopt: there is none.
std::optional<Chain> span_run(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);
/// The same where best_span has chosen already.
/// @pre neither end moves along its axis
Chain span_run(const FoldedCatalog& folded, const ChainRequest& request, const Span& span, const SpanChoice& choice);

}  // namespace riserun::chain
