// The job's own relief valves with the regulator failed open and the riser stopped: what each passes, what the supply
// gives, and the greatest pressure that the two leave in the reservoir.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"
#include "transfer/failed_regulator.h"

#include <vector>

namespace riserun::plan {

/// What a code valve may be off, up to 70 psi (ASME BPVC Section VIII UG-134(d)(1), since 2021 Section XIII Table
/// 3.6.3.1-2); and what it may rise to full flow: 10 % or 3 psi, the greater (UG-125(c)). Taken where the job does not
/// give the valve's own.
inline const PressureDifference kCodeTolerance = psi(2.0);
inline constexpr double kCodeRiseShare = 0.1;
inline const PressureDifference kCodeRise = psi(3.0);

/// The greater of a tenth and the least that the code lets it rise.
PressureDifference code_rise(GaugePressure opens);

/// In the order of the ways.
/// @param flowing the same valves, as they let air out
std::vector<ReliefValve> relief_valves(const Inputs& inputs, const std::vector<Way>& ways,
                                       const transfer::System& system,
                                       const std::vector<transfer::ReliefValve>& flowing, Remarks& remarks);

/// That can occur: where the valves hold the supply with the riser stopped, but not below the lowest pressure at which
/// one is surely open; without valves the supply's own.
GaugePressure greatest_pressure(GaugePressure riser_stopped, GaugePressure supply,
                                const std::vector<ReliefValve>& valves);

}  // namespace riserun::plan
