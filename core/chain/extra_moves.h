// Moves that the folded classes do not hold: parts that a need asks for (with plugs for the ports beyond two), parts
// from the bin, and the best special-order part of each class.
#pragma once

#include "chain/graph.h"

namespace riserun::chain {

/// All moves by needed parts and parts of the bin that the rules admit. Needed parts bought are folded: one best a
/// class.
std::vector<Move> extra_moves(const Network& network, const Rules& rules, const GraphExtras& extras);

}  // namespace riserun::chain
