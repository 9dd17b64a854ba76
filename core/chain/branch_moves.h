// Moves of a branched assembly: one part entered by one port, with one or more ports that lead on; the rest plugged.
#pragma once

#include "chain/network.h"
#include "chain/rules.h"

#include <vector>

namespace riserun::chain {

inline constexpr std::size_t kMostPorts = 16;  // of a part in an assembly; parts with more are left out

/// An open end as the search tells them apart: the material only where a galvanic rule looks at it.
struct Face {
  PortTypeId type;
  MaterialId material;
  auto operator<=>(const Face&) const = default;
};

/// Digits of a Tally that a move takes.
struct Taking {
  std::uint32_t digit = 0;
  int count = 0;
  auto operator<=>(const Taking&) const = default;
};

struct BranchMove {
  PartId part;
  std::uint8_t enter = 0;
  Face enter_face;
  bool closes = false;           // a union: its two sides are made up apart
  std::uint32_t exit_ports = 0;  // bit by port: those that lead on
  std::vector<Face> exits;       // what they show, in port order
  std::vector<PartId> plugs;     // for the other ports, in port order
  std::vector<Taking> takes;     // by digit
  Cost cost;                     // plugs included

  bool leads_on(std::size_t port) const { return exit_ports >> port & 1u; }
};

/// Which digit counts what; a digit of UINT32_MAX: not counted.
struct BranchDigits {
  std::vector<std::uint32_t> of_need_group;
  std::vector<std::uint32_t> of_bin_item;
  bool wish_plugs = false;  // where no plug goes into a spare port, one that does not exist closes it
};

/// Every move that the rules admit; of those that a search cannot tell apart the best, ties to the ids.
std::vector<BranchMove> branch_moves(const Network& network, const Rules& rules, const BranchDigits& digits);

}  // namespace riserun::chain
