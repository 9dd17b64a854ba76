// The regulator fails wide open: what pressure the air supply then holds in the reservoir, with the riser open and with
// it stopped, and the restrictor that keeps it below a limit.
#pragma once

#include "transfer/system.h"

#include <optional>
#include <vector>

namespace riserun::transfer {

/// A relief valve on the reservoir and its way there. Between the two pressures its opening grows evenly.
struct ReliefValve {
  hydraulics::AirLine way;             // from the reservoir to the valve
  Length bore{};                       // of the valve
  GaugePressure opens;                 // begins to open
  GaugePressure wide_open;             // above `opens`, or the same: it pops
  double discharge_coefficient = 0.6;  // common practice for a plain port where the maker gives none

  /// What it lets out at a pressure in the reservoir.
  MassFlow flow(GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature) const;
};

struct FailedRegulator {
  GaugePressure lifting;        // while water still leaves through the riser: as much room opens as air comes in
  GaugePressure blowing;        // once the riser is uncovered and air leaves through the line
  GaugePressure highest;        // the greater of the two
  GaugePressure riser_stopped;  // nothing leaves but by the relief valves; without any the supply's own
};

/// The row from the supply to the reservoir with the regulator wide open, which then takes no pressure of its own: a
/// seat that is wide open passes more than the fittings beside it (common practice).
hydraulics::AirLine line_with_failed_regulator(const AirSupply& air);

/// Steady pressures with the regulator wide open to `supply`. With the riser open no other way out than the line is
/// counted, and the water is at its worst: the reservoir down to the riser's end, the table at its rim. The supply is
/// taken to hold its pressure, which a receiver does long enough.
///
/// Air through the line: isothermal flow in a pipe with all losses, m = A sqrt((p1^2 - p2^2) / (R T (K + 2
/// ln(p1/p2)))), limited by choking at the outlet; K is the line's loss on its smallest bore at the same velocity head.
/// Source: Crane TP-410, simplified compressible flow, isothermal (from memory).
FailedRegulator failed_regulator_pressure(const System& system, GaugePressure supply,
                                          const std::vector<ReliefValve>& relief = {});

/// Bore of a drilled hole before the regulator that keeps a failed regulator at or below `limit`: with the riser
/// stopped where there are relief valves, else with it open. The feed's own bore if what is there does it already;
/// nullopt if no bore does, because the water's lift alone needs more than the limit, or no valve opens below it.
std::optional<Length> restrictor_bore(const System& system, GaugePressure supply, GaugePressure limit,
                                      const std::vector<ReliefValve>& relief = {});

/// The same system with such a hole before its regulator.
System with_restrictor(System system, Length bore);

}  // namespace riserun::transfer
