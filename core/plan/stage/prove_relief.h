// How each relief valve is proved before it is needed.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <string>
#include <vector>

namespace riserun::plan {

struct Proof {
  Fact what;
  std::string connection;  // that the valve stands on
  std::string port{};      // of the reservoir, in place of whose plug it goes on for that; empty: not on the tank

  bool on_the_tank() const { return !port.empty(); }
};

/// On the tank by the rig of the leak test, from where nobody is near, and within what the tank has just stood (common
/// practice); else on a bench. In the order of the ways.
/// @param plan all but its order of work
std::vector<Proof> relief_proofs(const Inputs& inputs, const Plan& plan);

/// Written into the leak test's sheet, which is what hangs there: those on the tank before its rig comes off, those on
/// a bench at its end.
/// @param plan all but its order of work, the leak test's sheet written
void put_proofs_on_sheet(const Inputs& inputs, Plan& plan);

}  // namespace riserun::plan
