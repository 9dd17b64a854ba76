// Of things that a search cannot tell apart, the best is enough.
#pragma once

#include <algorithm>

namespace riserun::chain {

/// Moves the best of each class to the front, sorted by class. O(n log n).
///
/// @param key       of a class; must have <=>
/// @param goodness  the least is the best; no two of a class have the same
/// @return the end of what is kept; what is behind it may be erased
template <class Iterator, class Key, class Goodness>
Iterator keep_best(Iterator first, Iterator last, Key key, Goodness goodness) {
  std::sort(first, last, [&](const auto& a, const auto& b) {
    const auto order = key(a) <=> key(b);
    return order != 0 ? order < 0 : goodness(a) < goodness(b);
  });
  return std::unique(first, last, [&](const auto& a, const auto& b) { return key(a) == key(b); });
}

}  // namespace riserun::chain
