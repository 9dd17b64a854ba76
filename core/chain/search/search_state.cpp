#include "chain/search/search_state.h"

namespace riserun::chain {

std::size_t SearchStateHash::operator()(const SearchState& state) const noexcept {
  std::uint64_t mix = state.spent * 0x9E3779B97F4A7C15u;
  mix ^= (std::uint64_t{state.node} << 32) ^ (std::uint64_t{state.parts} << 16) ^
         (std::uint64_t{state.progress.met} << 1) ^ (state.progress.closed ? 1u : 0u) ^
         (std::uint64_t{state.bushings} << 9);
  mix *= 0xBF58476D1CE4E5B9u;
  return static_cast<std::size_t>(mix ^ (mix >> 29));
}

BinDigits::BinDigits(const catalog::Bin& bin, const std::vector<Move>& moves)
    : digit_of_item_(bin.items.size(), kNoRow) {
  std::vector<int> most;
  for (const Move& move : moves) {
    for (const BinUse& use : move.bin_uses) {
      if (digit_of_item_[use.item] != kNoRow) continue;
      digit_of_item_[use.item] = static_cast<std::uint32_t>(most.size());
      most.push_back(bin.items[use.item].count);
    }
  }
  counts_ = MixedRadix<std::uint64_t>(std::move(most));
}

}  // namespace riserun::chain
