// What trees are compared by: a Cost in two words, as tables hold millions of them.
#pragma once

#include "chain/part/measures.h"

#include <limits>

namespace riserun::chain {

/// Sums of dollars up to ten billions, of parts up to a million; under the orders line and bin of narrowing up to a
/// trillion velocity heads, of the rest up to 65,535.
struct BranchSum {
  std::uint64_t first = std::numeric_limits<std::uint64_t>::max();
  std::uint64_t second = 0;
  auto operator<=>(const BranchSum&) const = default;
  bool reachable() const { return first != std::numeric_limits<std::uint64_t>::max(); }
  friend BranchSum operator+(BranchSum a, const BranchSum& b) { return {a.first + b.first, a.second + b.second}; }
};

/// @pre no wish, no length, no head: assemblies are not weighed by them
inline BranchSum packed(Order order, const Cost& cost) {
  const auto at = [&](std::size_t i) { return static_cast<std::uint64_t>(cost.tuple[i]); };
  if (order == Order::price) return {at(1), at(2) << 32 | at(3)};
  if (!keeps_the_line(order)) return {at(1) << 44 | at(2), at(3) << 32 | at(4)};
  const auto first = [&](std::size_t i) { return at(i) >> 32; };
  const auto second = [&](std::size_t i) { return at(i) & UINT32_MAX; };
  return {at(1) << 20 | first(2), second(2) << 48 | first(3) << 32 | second(3) << 16 | at(4)};
}

inline Cost unpacked(Order order, const BranchSum& sum) {
  const auto bits = [](std::uint64_t word, unsigned from, unsigned to) {
    return static_cast<std::int64_t>(word >> from & ((std::uint64_t{1} << (to - from)) - 1));
  };
  const auto [a, b] = sum;
  if (order == Order::price) return {{0, static_cast<std::int64_t>(a), bits(b, 32, 63), bits(b, 0, 32), 0}};
  if (!keeps_the_line(order)) return {{0, bits(a, 44, 63), bits(a, 0, 44), bits(b, 32, 63), bits(b, 0, 32)}};
  return {{0, bits(a, 20, 63), before_and_after(bits(a, 0, 20), bits(b, 48, 63)),
           before_and_after(bits(b, 32, 48), bits(b, 16, 32)), bits(b, 0, 16)}};
}

}  // namespace riserun::chain
