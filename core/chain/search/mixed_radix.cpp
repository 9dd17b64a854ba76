#include "chain/search/mixed_radix.h"

#include <algorithm>
#include <limits>

namespace riserun::chain {

MixedRadix::MixedRadix(std::vector<int> most) : most_(std::move(most)) {
  constexpr std::uint64_t kTooMany = std::numeric_limits<std::uint32_t>::max();
  for (const int count : most_) {
    weights_.push_back(static_cast<std::uint32_t>(size_));
    size_ = std::min(kTooMany, size_ * (static_cast<std::uint64_t>(count) + 1));
  }
}

bool MixedRadix::holds(std::uint32_t whole, std::uint32_t part) const {
  for (std::size_t i = 0; i < most_.size(); ++i)
    if (digit(part, i) > digit(whole, i)) return false;
  return true;
}

std::vector<std::uint32_t> MixedRadix::parts_of(std::uint32_t whole) const {
  std::vector<std::uint32_t> parts{0};
  for (std::size_t i = 0; i < most_.size(); ++i) {
    const std::size_t before = parts.size();
    for (int value = 1; value <= digit(whole, i); ++value)
      for (std::size_t k = 0; k < before; ++k)
        parts.push_back(parts[k] + static_cast<std::uint32_t>(value) * weights_[i]);
  }
  return parts;
}

}  // namespace riserun::chain
