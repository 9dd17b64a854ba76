// The job's own relief valves with the regulator failed open and the riser stopped: what each passes, what the supply
// gives, and the greatest pressure that the two leave in the reservoir.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// What a code valve may be off, up to 70 psi (ASME BPVC Section VIII UG-134(d)(1), since 2021 Section XIII Table
/// 3.6.3.1-2); and what it may rise to full flow: 10 % or 3 psi, the greater (UG-125(c)). Taken where the job does not
/// give the valve's own.
inline const PressureDifference kCodeTolerance = psi(2.0);
inline constexpr double kCodeRiseShare = 0.1;
inline const PressureDifference kCodeRise = psi(3.0);

/// In the order of the ways.
std::vector<ReliefValve> relief_valves(const Inputs& inputs, const std::vector<Way>& ways,
                                       const transfer::AirSupply& air, Remarks& remarks);

/// At which the valves, each open from its full-flow pressure on, pass all that the supply gives: at least the lowest
/// of those pressures, at most the supply's own. Without valves nothing is between the walls and the supply.
GaugePressure greatest_pressure(const Inputs& inputs, const std::vector<Way>& ways, const transfer::AirSupply& air,
                                const std::vector<ReliefValve>& valves);

}  // namespace riserun::plan
