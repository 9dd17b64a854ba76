// Several small counts as one number, a digit for each, so that a sum of counts is a sum of numbers.
#pragma once

#include "quantity/input_error.h"

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace riserun::chain {

/// Numbers run from 0 up to size() - 1.
///
/// @tparam Number  std::uint32_t or std::uint64_t
template <class Number>
class MixedRadix {
 public:
  MixedRadix() = default;
  /// @throws InputError where the counts are too many to be told apart in such a number
  explicit MixedRadix(std::vector<int> most) : most_(std::move(most)) {
    for (const int count : most_) {
      assert(count >= 0);
      weights_.push_back(size_);
      const Number base = static_cast<Number>(count) + 1;
      if (size_ > std::numeric_limits<Number>::max() / base) refuse();
      size_ *= base;
    }
  }

  /// One more than the greatest number.
  Number size() const { return size_; }
  Number unit(std::size_t digit) const { return weights_[digit]; }
  int digit(Number number, std::size_t digit) const {
    return static_cast<int>(number / weights_[digit] % (static_cast<Number>(most_[digit]) + 1));
  }
  /// Adds to a digit; false, and nothing is done, where it would exceed its most.
  bool add(Number& number, std::size_t at, int count) const {
    if (digit(number, at) + count > most_[at]) return false;
    number += static_cast<Number>(count) * weights_[at];
    return true;
  }
  /// Every digit of the part is at most that of the whole.
  bool holds(Number whole, Number part) const {
    for (std::size_t i = 0; i < most_.size(); ++i)
      if (digit(part, i) > digit(whole, i)) return false;
    return true;
  }
  /// All numbers whose digits are at most those of the whole, from 0 up to it.
  std::vector<Number> parts_of(Number whole) const {
    std::vector<Number> parts{0};
    for (std::size_t i = 0; i < most_.size(); ++i) {
      const std::size_t before = parts.size();
      for (int value = 1; value <= digit(whole, i); ++value)
        for (std::size_t k = 0; k < before; ++k) parts.push_back(parts[k] + static_cast<Number>(value) * weights_[i]);
    }
    return parts;
  }

  /// @throws InputError always: there is more to count than can be told apart
  [[noreturn]] static void refuse() {
    throw quantity::InputError({{"", 0, 0,
                                 "too many targets, needs and scarce parts of the bin to tell apart: leave out some "
                                 "needs, or bin parts that there are too few of",
                                 ""}});
  }

 private:
  std::vector<int> most_;
  std::vector<Number> weights_;
  Number size_ = 1;
};

}  // namespace riserun::chain
