// The regulator fails wide open: what pressure the feed then holds in a reservoir whose riser is open, and the
// restrictor that keeps it below a limit.
#pragma once

#include "transfer/system.h"

#include <optional>

namespace riserun::transfer {

struct FailedRegulator {
  GaugePressure lifting;  // while water still leaves through the riser: as much room opens as air comes in
  GaugePressure blowing;  // once the riser is uncovered and air leaves through the line
  GaugePressure highest;  // the greater of the two
};

/// Steady pressures with the feed bore wide open to `supply` and no other way out than the line. The water is at its
/// worst: the reservoir down to the riser's end, the table at its rim. The supply is taken to hold its pressure, which
/// a receiver does long enough.
///
/// Air through the line: isothermal flow in a pipe with all losses, m = A sqrt((p1^2 - p2^2) / (R T (K + 2
/// ln(p1/p2)))), limited by choking at the outlet; K is the line's loss on its smallest bore at the same velocity head.
/// Source: Crane TP-410, simplified compressible flow, isothermal (from memory).
FailedRegulator failed_regulator_pressure(const System& system, GaugePressure supply);

/// Bore of a restrictor in the feed that caps `failed_regulator_pressure` at `limit`. The feed's own bore if that does
/// it already; nullopt if no bore does, because the water's lift alone needs more than the limit.
std::optional<Length> restrictor_bore(const System& system, GaugePressure supply, GaugePressure limit);

}  // namespace riserun::transfer
