// What draws on one bin for several runs, and what of it each of them gets.
#pragma once

#include "chain/ask/assembly.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// A part that a chain may end in, or that is wanted by itself.
struct EndPart {
  PartId part;
  PortEnd end;          // what the chain then ends at; not looked at where there is no chain
  bool on_sale = true;  // false: only what the bin has of it
  bool operator==(const EndPart&) const = default;
};

/// What draws on the bin: a chain, a chain that ends in one of several parts, one of several parts alone, or a branched
/// assembly. The order and the bin of a request are those of the allocation instead.
struct Demand {
  std::optional<ChainRequest> request;
  std::vector<EndPart> ends;                  // not empty: the part is chosen together with the chain
  std::optional<Span> span{};                 // the distance that the chain makes; without `ends`
  std::optional<AssemblyRequest> branched{};  // instead of the others; but for loss and length
  bool operator==(const Demand&) const = default;
};

struct Allotment {
  bool met = false;
  std::optional<Run> run;          // where the demand asks for one
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

}  // namespace riserun::chain
