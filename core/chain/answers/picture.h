// A picture of what was searched near an answer, for whoever asks why it is this one.
#pragma once

#include "chain/ask/run.h"
#include "chain/graph/folded_catalog.h"

#include <string>

namespace riserun::chain {

/// In the DOT language of Graphviz: open ends as nodes by their written names, the part that may be put onto one as an
/// arrow to the end that it is left at, and the answer's arrows bold. Drawn is every part of the graph that stands in a
/// chain of no more parts than the answer has; without an answer, what is one part away from either port. Of parts that
/// lead the same way, the graph holds those that the order may choose. O(arcs * log(arcs)).
///
/// @param answer  to the request; nullptr: there is none
std::string picture_of(const FoldedCatalog& folded, const ChainRequest& request, const Chain* answer);

}  // namespace riserun::chain
