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
};

/// On the tank by the rig of the leak test, from where nobody is near, and within what the tank has just stood (common
/// practice); else on a bench. In the order of the ways.
/// @param plan all but its order of work
std::vector<Proof> relief_proofs(const Inputs& inputs, const Plan& plan);

}  // namespace riserun::plan
