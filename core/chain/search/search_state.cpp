#include "chain/search/search_state.h"

#include <algorithm>

namespace riserun::chain {

std::size_t SearchStateHash::operator()(const SearchState& state) const noexcept {
  std::uint64_t mix = state.spent * 0x9E3779B97F4A7C15u;
  mix ^= (std::uint64_t{state.node} << 32) ^ (std::uint64_t{state.parts} << 16) ^
         (std::uint64_t{state.progress.met} << 1) ^ (state.progress.closed ? 1u : 0u) ^
         (std::uint64_t{state.bushings} << 9);
  mix *= 0xBF58476D1CE4E5B9u;
  return static_cast<std::size_t>(mix ^ (mix >> 29));
}

BinDigits::BinDigits(const catalog::Bin& bin, const std::vector<Move>& moves) {
  std::uint64_t weight = 1;
  for (std::uint32_t item = 0; item < bin.items.size(); ++item) {
    digits_.push_back({weight, static_cast<std::uint64_t>(bin.items[item].count) + 1});
    const bool counted = std::any_of(moves.begin(), moves.end(), [&](const Move& move) {
      return std::any_of(move.bin_uses.begin(), move.bin_uses.end(),
                         [&](const BinUse& use) { return use.item == item; });
    });
    if (counted) weight *= digits_.back().base;
  }
}

bool BinDigits::spend(std::uint64_t& spent, const Move& move) const {
  for (const BinUse& use : move.bin_uses) {
    const Digit& digit = digits_[use.item];
    const std::uint64_t used = spent / digit.weight % digit.base;
    if (used + static_cast<std::uint64_t>(use.count) >= digit.base) return false;
    spent += static_cast<std::uint64_t>(use.count) * digit.weight;
  }
  return true;
}

}  // namespace riserun::chain
