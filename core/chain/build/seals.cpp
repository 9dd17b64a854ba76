#include "chain/build/seals.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using quantity::Fact;
using quantity::fact;

namespace {

constexpr double kTurnsAreCountedIn = 0.25;

double counted(double turns) { return std::floor(turns / kTurnsAreCountedIn + 0.5) * kTurnsAreCountedIn; }

}  // namespace

Fact turns_past_hand(const catalog::Catalog& catalog, catalog::PortTypeId a, catalog::PortTypeId b, bool plastic) {
  const catalog::PortTypeId thread = catalog.port_type(b).end == catalog::End::male ? b : a;
  const catalog::JointSize* size = catalog.joint_size(catalog.port_type(thread));
  if (!size || size->turns_past_hand_high <= 0.0) return fact("hand_tight_and_a_little");
  const double low = counted(plastic ? std::min(1.0, size->turns_past_hand_low) : size->turns_past_hand_low);
  const double high = counted(plastic ? std::min(2.0, size->turns_past_hand_high) : size->turns_past_hand_high);
  if (low < high) return fact("hand_tight_and_turns_between", low, high);
  return high > 1.0 ? fact("hand_tight_and_turns", high) : fact("hand_tight_and_turn", high);
}

Fact Seals::sealing(const catalog::Catalog& catalog, const catalog::MatingRule& joint, std::size_t step) {
  const auto [known, is_new] = sealed_in_.try_emplace(joint.seal, step);
  if (!is_new) return fact("seal_as_in_step", known->second);
  const catalog::Seal* seal = catalog.seal(joint.seal);
  if (seal && !seal->instruction.empty()) return fact("seal_instruction", seal->instruction);
  return fact("seal_by_name", joint.seal);
}

}  // namespace riserun::chain
