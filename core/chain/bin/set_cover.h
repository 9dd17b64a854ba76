// The least set of pieces that holds, for each of several wants, one of the sets that meet it.
//
// How it works: branch and bound. Pieces that a cheaper one can stand for everywhere are left out; then the want with
// the fewest sets is met by each of them in turn. Wants that have no piece in common need one each at least, and a set
// that with those comes to more pieces than the best so far is not followed.
//
// Worst case: exponential in the wants. Prices are cents.
#pragma once

#include "chain/bin/part_multisets.h"

#include <cstdint>
#include <vector>

namespace riserun::chain {

/// What decides between sets of equal size.
struct CoverPiece {
  std::int64_t cents = 0;
  std::uint32_t rank = 0;  // of its id
};

/// Fewest pieces, then least cents, then the ranks that sort first. Exact.
///
/// @param wants   for each want the sets that meet it, none of them empty of sets
/// @param pieces  by row as the sets name them
Pieces least_cover(std::vector<std::vector<Pieces>> wants, const std::vector<CoverPiece>& pieces);

/// Of the sets within `cover` the least, by the same measure.
/// @pre one of them is within it
Pieces first_covering(const std::vector<Pieces>& sets, const Pieces& cover, const std::vector<CoverPiece>& pieces);

}  // namespace riserun::chain
