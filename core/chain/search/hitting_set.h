// The smallest set that is enough for something, exactly: a minimum hitting set of what each insufficient set leaves
// out.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>

namespace riserun::chain {

/// Rows as bits. The smallest set that is good, where what holds a good set is good; of equally small ones the one
/// whose rows sort first. nullopt: not even all rows are.
///
/// Exact by duality (Reiter 1987; implicit hitting sets): what a set that is not good leaves out, grown as far as it
/// can be, every good set must take something of. The smallest set that takes something of each so far known is good,
/// or yields one more.
///
/// Worst case: exponential in the count; is_good is asked once for each minimal set found, and `count` times to grow
/// it.
///
/// @param count  of rows, at most 63
std::optional<std::uint64_t> least_set(int count, const std::function<bool(std::uint64_t)>& is_good);

}  // namespace riserun::chain
