// The states of a search over a request's graph: all that it must remember of a chain's beginning besides what it
// costs, and which state follows when a part is put on. Every search asks here whether a part may follow.
#pragma once

#include "chain/graph/arc.h"
#include "chain/part/move.h"
#include "chain/rules/rules.h"
#include "chain/search/mixed_radix.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace riserun::chain {

/// In a row number of a search's lists: none.
inline constexpr std::uint32_t kNoRow = UINT32_MAX;

/// How far a chain's beginning has come with what is asked of the whole chain.
struct Progress {
  std::uint8_t met = 0;  // needs met, a bit each
  bool closed = false;   // a closing joint is made, or none is wanted
  auto operator<=>(const Progress&) const = default;
};

inline Progress at_the_start(const Rules& rules) { return {0, rules.closing() == Closing::none}; }

/// False: the part neither meets a need nor is it the first that closes, as most parts.
inline bool may_change(Progress before, const Gain& gain) {
  return gain.groups != 0 || gain.only_for_need || (gain.closes && !before.closed);
}

/// The progress with one part more; nullopt: the part would stand there for nothing.
inline std::optional<Progress> after(const Rules& rules, Progress before, const Gain& gain) {
  if (!may_change(before, gain)) return before;
  const std::uint8_t met = gain.groups == 0 ? before.met : rules.advance(before.met, gain.groups);
  if (gain.only_for_need && met == before.met) return std::nullopt;
  return Progress{met, before.closed || gain.closes};
}

struct SearchState {
  std::uint32_t node = 0;  // graph nodes, then the start, then the goal
  Progress progress;
  std::uint16_t parts = 0;     // told apart only under a limit
  std::uint64_t spent = 0;     // counted parts of the bin, one digit each
  std::uint16_t bushings = 0;  // told apart only under a limit
  bool operator==(const SearchState&) const = default;
};

struct SearchStateHash {
  std::size_t operator()(const SearchState& state) const noexcept;
};

/// What has been taken of the bin as one number: a digit for each of its parts that some move uses.
class BinDigits {
 public:
  /// @throws InputError where too many parts are counted to be told apart in 64 bits
  BinDigits(const catalog::Bin& bin, const std::vector<Move>& moves);

  /// Takes the move's parts of the bin; false when they are not all there any more.
  bool spend(std::uint64_t& spent, const Move& move) const {
    for (const BinUse& use : move.bin_uses)
      if (!counts_.add(spent, digit_of_item_[use.item], use.count)) return false;
    return true;
  }

 private:
  std::vector<std::uint32_t> digit_of_item_;  // by bin row; kNoRow: no move counts it
  MixedRadix<std::uint64_t> counts_;
};

}  // namespace riserun::chain
