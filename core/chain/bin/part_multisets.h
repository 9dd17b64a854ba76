// Every chain of a request, as far as it matters which classes of parts it is made of.
//
// How it works: beginnings of chains are labels, extended one part at a time. One that must buy more, with what the
// rest buys at least (fewest steps to the goal), than is allowed is dropped, and so is one whose pieces hold all those
// of another that stands at the same end with as much met.
//
// Worst case: labels grow exponentially with the pieces that a chain may need beyond those at hand; kMostTogether keeps
// them few.
#pragma once

#include "chain/bin/part_classes.h"

#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

namespace riserun::chain {

/// Classes of parts with how many of each, by class.
using Pieces = std::vector<std::pair<std::uint32_t, int>>;

bool is_within(const Pieces& less, const Pieces& more);
int count_in(const Pieces& pieces);
/// The classes of both; of one that is in both, `both(count, count)`.
template <class Both>
Pieces merged(Pieces a, const Pieces& b, Both both) {
  for (const auto& [row, count] : b) {
    const auto at = std::lower_bound(a.begin(), a.end(), std::pair(row, 0));
    if (at != a.end() && at->first == row)
      at->second = both(at->second, count);
    else
      a.insert(at, {row, count});
  }
  return a;
}
/// What is in the first and, piece by piece, not among the counts.
Pieces beyond(const Pieces& pieces, const std::vector<int>& counts);

/// What the chains of the request are made of that need at most so many pieces beyond `there`: those of which no other
/// needs less. Plugs included.
///
/// @param there  by class: pieces at hand
std::vector<Pieces> part_multisets(const Rules& rules, const PartClasses& classes, const std::vector<int>& there,
                                   int most_beyond);

}  // namespace riserun::chain
