// One bin for several chains: which of its parts goes into which chain, best for all of them together.
#pragma once

#include "chain/finder.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// A part that a chain may end in, or that is wanted by itself.
struct EndPart {
  PartId part;
  PortEnd end;          // what the chain then ends at; not looked at where there is no chain
  bool on_sale = true;  // false: only what the bin has of it
};

/// What draws on the bin: a chain, a chain that ends in one of several parts, or one of several parts alone.
struct Demand {
  std::optional<ChainRequest> request;  // its order and its bin are those of the allocation instead
  std::vector<EndPart> ends;            // not empty: the part is chosen together with the chain
  std::optional<Span> span{};           // the distance that the chain makes; without `ends`
};

struct Allotment {
  bool met = false;
  std::optional<Chain> chain;      // where the demand asks for one
  std::optional<std::size_t> end;  // row of Demand::ends
  bool end_from_bin = false;
  catalog::Bin given;  // what the demand takes of the bin
};

/// Why nothing is better: the sum that nothing can go below, and what had to be told apart to get from there to the
/// sum that was reached.
struct AllocationProof {
  bool at_bound = false;          // reached with each demand as well off as if the bin were its own
  std::vector<PartId> contested;  // parts of the bin that more was wanted of than there is, in the order of the bin
  std::size_t splits = 0;         // ways to share them that were looked at; all others are no better than the last one
};

struct Allocation {
  std::vector<Allotment> of;  // by demand
  AllocationProof proof;
};

/// The allocation that leaves fewest demands unmet, then makes the distances asked for in the plainest ways (SpanMake,
/// added up), then has the least sum of all costs under the order. Of equal sums
/// the one whose first demand is better off, then the second, and so on: a chain of less cost, then the
/// one that lands nearest, then the usual tie of
/// chains (fewer bushings and close nipples, ids that sort first, ports used), then the end part that stands first,
/// from the bin before bought. Exact.
Allocation allocate(const Finder& finder, const std::vector<Demand>& demands, const catalog::Bin& bin, Order order);

}  // namespace riserun::chain
