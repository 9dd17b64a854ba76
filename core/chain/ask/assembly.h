// Branched assemblies: one port, the base, joined to two to eight others, the targets, by parts with three and more
// ports; spare ports plugged.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/request.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::chain {

inline constexpr std::size_t kFewestTargets = 2;
inline constexpr std::size_t kMostTargets = 8;

/// Which way air or water runs on a branch; a one-way part on it looks that way.
enum class BranchFlow : std::uint8_t { from_base, to_base };

/// Where the joint with a target looks. Straight on: no part on its way turns, so that it looks as the base does. To a
/// side: just one part turns, by a quarter. What bends (a hose) looks in no known direction: neither has it.
enum class Facing : std::uint8_t { any, straight_on, to_a_side };

/// What a person may ask of the way from the base to one target, beside what is asked of the whole assembly. Each field
/// has a row in ask/askable.h.
struct WayRules {
  std::vector<Need> needs;      // each met on this way alone: by what no other target hangs on
  bool needs_in_order = false;  // met one after the other as given, from the base on
  std::optional<Length> smallest_bore;
  Facing facing = Facing::any;
  bool operator==(const WayRules&) const = default;
};

struct BranchRules : WayRules {
  BranchFlow flow = BranchFlow::from_base;
  /// It ends in a relief valve that guards the base: nothing that can shut is on the way, and, unless a smallest bore
  /// is given, no joint of a smaller nominal size than the valve's inlet and no bore below the valve's own (ASME BPVC
  /// section VIII UG-135, from memory).
  bool relief = false;
  std::vector<bool> banned;        // by part row: not on this way; empty: none
  std::vector<std::string> avoid;  // what is banned, as written
  /// Where not empty the branch ends in one of these, entered by that port, paid for, and the best for the whole is
  /// taken; the target's type and material are not looked at. A device that ends a branch need not stand the rating.
  std::vector<catalog::PortUse> devices;
  bool operator==(const BranchRules&) const = default;
};

/// Ends are loose (they can be turned onto the assembly) or fixed (held still); on the way between any two fixed ends
/// there must be a closing joint. Orders: line, parts, price, bin. A tie beyond the order goes to the assembly with
/// fewer bushings and close nipples, and what still ties to the one whose list, read from the base outwards and port by
/// port, has targets first (in the order asked for; a device that ends a branch by its id, then its port), then the
/// part ids that sort first, then the earlier entered port. Targets that nothing tells apart count as the first of
/// them; those with needs of their own, that look to a side, or that end in a relief valve of one of several sizes are
/// told apart.
struct AssemblyRequest {
  /// What a chain request says, with the base as its `from` end. Each need is met once, anywhere in the assembly;
  /// devices are put in only to meet one. `most_bushings` counts those of all branches together, devices at their ends
  /// left out. `to`, `needs_in_order`, `most_parts` and `flow` are not looked at.
  ChainRequest rules;
  std::vector<PortEnd> targets;
  std::vector<BranchRules> branches;  // beside the targets; what is beyond its end: nothing is asked

  const BranchRules& branch(std::size_t target) const;
  bool operator==(const AssemblyRequest&) const = default;
};

/// What texts call them: as the request does, else "the base" and "target 2", counted from 1.
std::string name_of_base(const AssemblyRequest& request);
std::string name_of_target(const AssemblyRequest& request, std::size_t row);

/// Why there is no assembly, and the smallest change that would make one.
struct NoAssembly {
  Fact reason;
  std::vector<std::size_t> targets;  // a least set of targets that cannot be reached together
  std::optional<NoChain> way;        // where that is one target: why no chain leads to it
  Facts mends;                       // each alone is enough
};

using AssemblyAnswer = std::variant<Assembly, NoAssembly>;

}  // namespace riserun::chain
