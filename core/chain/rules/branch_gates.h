// Which targets may lie beyond a way through a part, and what they gain by it: the rules of single branches.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/rules/rules.h"

#include <cstdint>
#include <vector>

namespace riserun::chain {

/// A way through a part, as the targets beyond see it.
struct Gate {
  std::uint32_t kinds = UINT32_MAX;  // bit by kind of target: may lie beyond
  bool quarter_turn = false;         // targets beyond that look to a side get their turn here
  auto operator<=>(const Gate&) const = default;
};

/// The rules of one kind of target, with the inlet that a relief valve at its end has.
struct KindRules {
  const BranchRules* rules = nullptr;
  double least_size = 0.0;  // nominal, inches: no joint on the way is smaller; 0: any
  Length least_bore{};
};

class BranchGates {
 public:
  BranchGates(const Catalog& catalog, std::vector<KindRules> kinds) : catalog_(catalog), kinds_(std::move(kinds)) {}

  Gate between(PartId part, std::size_t enter, std::size_t leave) const;
  /// No joint on the base is too small for any target.
  bool base_fits(PortTypeId base) const;

 private:
  const Catalog& catalog_;
  std::vector<KindRules> kinds_;
};

}  // namespace riserun::chain
