// May these two ends be joined? All searches ask here.
#pragma once

#include "chain/rules/rules.h"

namespace riserun::chain {

/// An end that a joint is made of, as far as the rules look at it.
struct OpenEnd {
  PortTypeId type;
  MaterialId material;   // invalid: no galvanic verdict
  bool no_grip = false;  // the body cannot be held: only what is turned goes onto it
  Bow bow = Bow::none;   // of the piece that shows it
  auto operator<=>(const OpenEnd&) const = default;
};

/// The mating rule lets the ends go together; so do the request's rules, and what there is to hold.
/// @pre the rule is that of their two types
inline bool may_join(const Rules& rules, const OpenEnd& open, const OpenEnd& entered, const catalog::MatingRule& rule) {
  return rules.may_meet(open.material, entered.material) &&
         !((open.no_grip || entered.no_grip) && rule.turning == catalog::Turning::neither);
}

/// The rule by which the ends are joined; nullptr: they may not be. O(mates of the type).
inline const catalog::MatingRule* joint(const Rules& rules, const OpenEnd& open, const OpenEnd& entered) {
  const catalog::MatingRule* rule = rules.catalog().mating_rule(open.type, entered.type);
  return rule && may_join(rules, open, entered, *rule) ? rule : nullptr;
}

/// The end of a request, which can always be held.
inline OpenEnd open_end_of(const PortEnd& end) { return {end.type, end.material.value_or(MaterialId{}), false}; }

}  // namespace riserun::chain
