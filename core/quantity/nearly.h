// Comparisons that do not hang on the last bits of a number: what is written in two units, or worked out in two ways,
// is one measure.
#pragma once

#include <cmath>

namespace riserun::quantity {

/// Share of a value by which two ways to write it may differ; far below what any shop can measure.
inline constexpr double kSameShare = 1e-9;

/// `a` is at most `b`, or is `b` written in another way. For plain numbers and every quantity.
template <class T>
bool at_most(const T& a, const T& b) {
  const auto plain = [](const T& value) -> double {
    if constexpr (requires { value.in_si(); }) {
      return value.in_si();
    } else if constexpr (requires { value.value(); }) {
      return value.value();
    } else {
      return static_cast<double>(value);
    }
  };
  return plain(a) <= plain(b) + kSameShare * std::abs(plain(b));
}

/// `a` is more than `b`, and not only written in another way.
template <class T>
bool more_than(const T& a, const T& b) {
  return !at_most(a, b);
}

}  // namespace riserun::quantity
