// Where a search over a request's graph stands: all that it must remember of a chain's beginning besides what it costs.
#pragma once

#include "chain/part/move.h"
#include "chain/rules/rules.h"

#include <cstdint>
#include <vector>

namespace riserun::chain {

/// In a row number of a search's lists: none.
inline constexpr std::uint32_t kNoRow = UINT32_MAX;

struct SearchState {
  std::uint32_t node = 0;      // graph nodes, then the start, then the goal
  std::uint8_t met = 0;        // needs met
  bool closed = false;         // a closing joint is made, or none is wanted
  std::uint16_t parts = 0;     // told apart only under a limit
  std::uint64_t spent = 0;     // counted parts of the bin, one digit each
  std::uint16_t bushings = 0;  // told apart only under a limit
  bool operator==(const SearchState&) const = default;
};

struct SearchStateHash {
  std::size_t operator()(const SearchState& place) const noexcept;
};

/// What has been taken of the bin as one number: a digit for each of its parts that some move uses.
class BinDigits {
 public:
  BinDigits(const catalog::Bin& bin, const std::vector<Move>& moves);

  /// Takes the move's parts of the bin; false when they are not all there any more.
  bool spend(std::uint64_t& spent, const Move& move) const;

 private:
  struct Digit {
    std::uint64_t weight = 1;
    std::uint64_t base = 1;  // one more than there are
  };
  std::vector<Digit> digits_;  // by bin row
};

}  // namespace riserun::chain
