// Moves of a branched assembly: one part entered by one port, with one or more ports that lead on; the rest plugged.
// A part of n ports is n * (2^(n - 1) - 1) moves at most, times the needs that it can meet; of those that a search
// cannot tell apart the best is kept.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/graph/joint.h"
#include "chain/part/run_ends.h"
#include "chain/rules/branch_gates.h"
#include "chain/rules/rules.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace riserun::chain {

inline constexpr std::size_t kMostPorts = 16;  // of a part in an assembly; parts with more are left out

/// An open end as the search tells them apart: the material only where a galvanic rule looks at it.
using Face = OpenEnd;

/// Digits of a MixedRadix that a move takes.
struct Taking {
  std::uint32_t digit = 0;
  int count = 0;
  int beyond = -1;                            // what follows must hold just so many; -1: any
  std::optional<std::size_t> alone_before{};  // only where all that lies beyond is that kind of target
  bool before_all = false;                    // only where every target lies beyond
  auto operator<=>(const Taking&) const = default;
};

struct BranchMove {
  PartId part;
  std::uint8_t enter = 0;
  Face enter_face;
  bool closes = false;           // a union: its two sides are made up apart
  std::uint32_t exit_ports = 0;  // bit by port: those that lead on
  std::vector<Face> exits;       // what they show, in port order
  std::vector<Gate> gates;       // beside exits: from the entered port to each
  std::vector<PartId> plugs;     // for the other ports, in port order
  std::vector<Taking> takes;     // by digit
  Cost cost;                     // plugs included, what it costs to pass its ports not
  Rest rest;                     // of what does not depend on materials
  std::vector<Make> makes;       // of the part and of its plugs, where the order looks at them
  ShownMetal entered;            // what the part shows there, likewise
  std::vector<ShownMetal> left;  // beside exits
  std::vector<std::pair<ShownMetal, ShownMetal>> plugged;  // host's and plug's, likewise

  bool leads_on(std::size_t port) const { return exit_ports >> port & 1u; }
};

/// A search before the last keys of an order cannot tell the two apart.
bool same_but_for_rest(const BranchMove& a, const BranchMove& b);

/// A need, of the whole or of one target, and the digit that counts how often it is met.
struct NeedDigit {
  std::vector<PartId> parts;  // sorted
  std::uint32_t digit = 0;
  std::optional<std::size_t> kind;  // of target whose need it is; nullopt: of the whole
  /// Needs that come in this order from the base on, with the parts that meet each; `parts` are those of any.
  std::vector<std::vector<PartId>> in_order;
  bool before_all = false;  // as Need has it

  bool names(PartId part) const { return std::binary_search(parts.begin(), parts.end(), part); }
};

/// Which digit counts what; a digit of UINT32_MAX: not counted.
struct BranchDigits {
  std::vector<NeedDigit> needs;
  std::vector<std::uint32_t> of_bin_item;
  std::uint32_t bushings = UINT32_MAX;
  bool wish_plugs = false;  // where no plug goes into a spare port, one that does not exist closes it
};

/// A way to end at a target: the port asked for, or a device that can stand there.
struct TargetWay {
  Face face;
  PartId device;  // invalid: the port asked for
  std::uint8_t port = 0;
  std::vector<Taking> takes;
  Cost cost;
  Rest rest;
};

/// Every move that the rules admit; of those that a search cannot tell apart the best, where the order looks at
/// materials the best in each; ties to the ids. Those that are the same but for the rest stand side by side.
/// @param ends  of the whole assembly, which plugs are judged by
std::vector<BranchMove> branch_moves(const FoldedCatalog& folded, const Rules& rules, const BranchGates& gates,
                                     const BranchDigits& digits, const RunEnds& ends);

/// The same of devices at the end of a branch; they are had from a store whether it stocks them or not.
std::vector<TargetWay> device_ways(const FoldedCatalog& folded, const Rules& rules, const BranchDigits& digits,
                                   const std::vector<catalog::PortUse>& devices);

}  // namespace riserun::chain
