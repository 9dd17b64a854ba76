#include "chain/rules/branch_gates.h"

#include "chain/part/head.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using catalog::Part;

namespace {

enum class Turn { none, quarter, other };

Turn turn_of(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  if (catalog.family(part.family).flexible) return Turn::other;
  const double between = std::abs(part.ports[enter].heading_degrees - part.ports[leave].heading_degrees);
  const double turn = std::abs(std::remainder(between - 180.0, 360.0));
  if (turn < 1.0) return Turn::none;
  return std::abs(turn - 90.0) < 1.0 ? Turn::quarter : Turn::other;
}

bool runs_as(const Part& part, std::size_t enter, BranchFlow flow) {
  return !part.arrow || (enter == 0) == (flow == BranchFlow::from_base);
}

bool faces_as(Facing facing, Turn turn) {
  return facing == Facing::any || turn == Turn::none || (facing == Facing::to_a_side && turn == Turn::quarter);
}

}  // namespace

Gate BranchGates::between(PartId id, std::size_t enter, std::size_t leave) const {
  const Part& part = catalog_.part(id);
  const Turn turn = turn_of(catalog_, part, enter, leave);
  const Length bore = std::min(port_bore(catalog_, part, enter), port_bore(catalog_, part, leave));
  const double size =
      std::min(nominal_inches(catalog_, part.ports[enter].type), nominal_inches(catalog_, part.ports[leave].type));
  Gate gate{0, false};
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    const BranchRules& rules = *kinds_[kind].rules;
    if (id.row < rules.banned.size() && rules.banned[id.row]) continue;
    if (rules.relief && catalog_.family(part.family).can_shut) continue;
    if (bore < kinds_[kind].least_bore || size < kinds_[kind].least_size) continue;
    if (!runs_as(part, enter, rules.flow) || !faces_as(rules.facing, turn)) continue;
    gate.kinds |= 1u << kind;
    gate.quarter_turn = gate.quarter_turn || (rules.facing == Facing::to_a_side && turn == Turn::quarter);
  }
  return gate;
}

bool BranchGates::base_fits(PortTypeId base) const {
  return std::all_of(kinds_.begin(), kinds_.end(),
                     [&](const KindRules& kind) { return nominal_inches(catalog_, base) >= kind.least_size; });
}

}  // namespace riserun::chain
