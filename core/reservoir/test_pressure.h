// The air pressure of the leak test: the lowest that finds leaks, well under what the walls may see.
#pragma once

#include "quantity/fact.h"
#include "quantity/quantities.h"
#include "reservoir/relief.h"
#include "reservoir/stored_energy.h"

#include <optional>

namespace riserun::reservoir {

/// Test pressures of flat-sided tanks: 1.5 to 3 psi (UL 142-2019, 42.2.1, rectangular tanks); 1 psi to start a
/// shop-built one with no rating (common practice). The walls' limit stays at least a fifth above, for the relief
/// valve.
inline constexpr GaugePressure kLeastTestPressure = GaugePressure::from_si(1.0 * kPascalsPerPsi);
inline constexpr GaugePressure kUsualTestPressure = GaugePressure::from_si(1.5 * kPascalsPerPsi);
inline constexpr GaugePressure kMostTestPressure = GaugePressure::from_si(3.0 * kPascalsPerPsi);
inline constexpr double kLimitOverTestPressure = 1.2;

struct TestPressure {
  std::optional<GaugePressure> pressure;  // none: the walls are too weak for a test with air
  quantity::Fact basis;                   // why that one, or why none and what would mend it
  GaugePressure relief;                   // in the test line, at or below the walls' limit
  GaugeChoice gauge;
  StoredEnergy energy;  // of the air, reservoir empty
};

/// The highest test that such walls stand, with the relief valve between.
GaugePressure most_test_pressure(GaugePressure wall_limit);

/// Chooses: the pressure in use if it lies between 1.5 and 3 psi, else the nearer of those; from 1 psi on where the
/// walls keep the factor of 4 only below 1.5 psi, or allow no better.
/// @param in_use greatest air pressure of the lift
/// @param wall_limit of the empty reservoir
/// @param keeps_factor up to which the walls keep kAirLiftFactor
TestPressure choose_test_pressure(GaugePressure in_use, GaugePressure wall_limit, GaugePressure keeps_factor,
                                  Volume air, AbsolutePressure atmosphere);

/// The same for a pressure that was asked for; none, with the reason, if the walls do not allow it.
TestPressure check_test_pressure(GaugePressure asked, GaugePressure wall_limit, Volume air,
                                 AbsolutePressure atmosphere);

}  // namespace riserun::reservoir
