// Several small counts as one number, a digit for each, so that a sum of counts is a sum of numbers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace riserun::chain {

class MixedRadix {
 public:
  /// @param most  the greatest value of each digit
  explicit MixedRadix(std::vector<int> most);

  /// One more than the greatest number.
  std::uint64_t size() const { return size_; }
  std::uint32_t unit(std::size_t digit) const { return weights_[digit]; }
  int digit(std::uint32_t number, std::size_t digit) const {
    return static_cast<int>(number / weights_[digit] % (static_cast<std::uint32_t>(most_[digit]) + 1));
  }
  /// Every digit of the part is at most that of the whole.
  bool holds(std::uint32_t whole, std::uint32_t part) const;
  /// All numbers whose digits are at most those of the whole, from 0 up to it.
  std::vector<std::uint32_t> parts_of(std::uint32_t whole) const;

 private:
  std::vector<int> most_;
  std::vector<std::uint32_t> weights_;
  std::uint64_t size_ = 1;
};

}  // namespace riserun::chain
