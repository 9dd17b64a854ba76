// What a run takes of the bin. Searches take the bin to be without end first, and count a part of it only where an
// answer takes it more often than it is there.
#pragma once

#include "chain/ask/request.h"
#include "chain/part/move.h"

#include <vector>

namespace riserun::chain {

/// How often the moves take each part of the request's bin, by row of the bin, beyond its count included. Of pieces cut
/// to measure those that are bought take nothing. O(moves * bin).
std::vector<int> uses_of_bin(const ChainRequest& request, const std::vector<Move>& moves);

/// Marks as counted, by row of the bin, all that the moves take too often; false: nothing that was not counted yet.
bool count_overdrawn(const ChainRequest& request, const std::vector<Move>& moves, std::vector<bool>& counted);

}  // namespace riserun::chain
