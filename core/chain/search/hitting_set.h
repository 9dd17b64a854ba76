// The smallest set that is enough for something, exactly: a minimum hitting set of what each insufficient set leaves
// out (R. Reiter, "A theory of diagnosis from first principles", Artificial Intelligence 32, 1987).
//
// How it works: the smallest set that takes something of each set to hit so far is asked about. It is enough, or it is
// grown as far as it can be without being so, and what it then leaves out, of which every set that is enough must take
// something, is one more set to hit.
//
// Worst case: exponential in the count; is_good is asked once for each minimal set found, and `count` times to grow it.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

namespace riserun::chain {

/// Rows as bits. The smallest set that is good, where what holds a good set is good; of equally small ones the one
/// whose rows sort first. nullopt: not even all rows are.
///
/// @param count  of rows, at most 63
std::optional<std::uint64_t> least_set(int count, const std::function<bool(std::uint64_t)>& is_good);

}  // namespace riserun::chain
