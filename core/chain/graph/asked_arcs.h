// Moves that the folded classes do not hold: parts that a need asks for (with plugs for the ports beyond two), parts
// from the bin, and the best special-order part of each class.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/graph/graph_extras.h"
#include "chain/rules/rules.h"

#include <vector>

namespace riserun::chain {

/// All moves by needed parts and parts of the bin that the rules admit. Needed parts bought are folded: one best a
/// class.
std::vector<Move> asked_moves(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras);

/// Of the moves from row `first` on, which lead from the same open ends to the same ones, keeps those that no other is
/// as good as in every measure; of equals the one with fewest drawbacks, then the first by its ids.
/// O(n^2) in these moves, which are few.
///
/// @param counts_bushings  a bushing is then no substitute for what is none
void keep_undominated(const FoldedCatalog& folded, std::vector<Move>& moves, std::size_t first, bool counts_bushings);

}  // namespace riserun::chain
