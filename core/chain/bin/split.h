// What the sharing of one bin among several runs is split into; see allocate.h.
#pragma once

#include "chain/part/move.h"
#include "chain/search/tie_key.h"
#include "chain/span/best_span.h"
#include "chain/tree/steiner_search.h"

#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace riserun::chain {

using Counts = std::vector<int>;  // by row of the bin

/// The best that a demand can have of that much of the bin.
struct Single {
  bool met = false;
  int make = 0;  // SpanMake, where a distance is asked for
  Cost cost;
  Rest rest;
  std::int64_t off = 0;  // micrometres that it lands off
  std::vector<Move> moves;
  std::optional<SpanChoice> choice;  // of a run that makes a distance, beside its moves
  std::optional<BranchTree> tree;    // of a branched assembly, instead of moves
  TieKey key;                        // of a branched assembly its tokens, as its search breaks ties
  std::optional<std::size_t> end;
  bool end_from_bin = false;
  Counts taken;
};

/// Less: better off; the order that `allocate` states for one demand.
std::strong_ordering compare(const Single& a, const Single& b);

/// Of each demand, how many of each part of the bin: one block, as each split has its own.
class Shares {
 public:
  Shares() = default;
  Shares(std::size_t demands, const Counts& each);
  std::span<int> of(std::size_t demand) { return std::span(counts_).subspan(demand * items_, items_); }
  std::span<const int> of(std::size_t demand) const { return std::span(counts_).subspan(demand * items_, items_); }

 private:
  std::size_t items_ = 0;
  Counts counts_;
};

/// A part of all allocations: what each demand may take at most, and what it takes at least, of each part of the bin.
/// With each demand served by itself it is no worse than any allocation in it.
struct Split {
  Shares most;
  Shares least;
  std::vector<const Single*> singles;  // by demand
  int unmet = 0;
  int makes = 0;
  Cost sum;
  Rest rest;
  std::size_t number = 0;
};

/// The other is looked at first.
bool is_worse(const Split& a, const Split& b);

}  // namespace riserun::chain
