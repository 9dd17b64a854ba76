// What keeps the walls from seeing too much: the relief valve's setting and the flow that it must pass, the factor of
// safety with the regulator working and failed, and the gauge or water column that shows the pressure.
#pragma once

#include "hydraulics/air_line.h"
#include "quantity/quantities.h"
#include "reservoir/walls.h"

#include <optional>
#include <vector>

namespace riserun::reservoir {

/// Compressed air that reaches the reservoir when the regulator fails open.
struct AirFeed {
  GaugePressure supply;      // of the receiver or main
  hydraulics::AirLine line;  // from there to the reservoir
  Temperature temperature;
};

/// A relief valve stands a little above the pressure in use, so that it does not weep, and never above the walls'
/// limit: a quarter above, at least 0.25 psi (common practice; installation manuals set 4 psi for a 3 psi test and 6
/// psi for 5 psi). nullopt: the pressure in use is already at or above the limit.
std::optional<GaugePressure> relief_setting(GaugePressure in_use, GaugePressure wall_limit);

/// The other way round: the lowest pressure in use that a valve which opens there is not set too high for.
GaugePressure least_relieved_by(GaugePressure opens);

struct Relief {
  GaugePressure setting;   // as given
  VolumeFlow must_pass{};  // free air: all that the feed gives with the regulator failed open
  Length valve_bore{};     // least clear bore that passes it at 1.1 times the setting, not above the walls' limit
};

/// @param setting above the atmosphere's pressure, at or below the limit
/// @param valve_discharge_coefficient 0.6 for a plain port: common practice where the maker gives none
Relief relief_for(GaugePressure setting, GaugePressure wall_limit, const AirFeed& feed, AbsolutePressure atmosphere,
                  double valve_discharge_coefficient = 0.6);

/// The factor that California Title 8 section 3301(e) asks of containers from which air lifts a substance, at the
/// greatest pressure that can occur. The text does not say against yield or against breaking: both are shown.
inline constexpr double kAirLiftFactor = 4.0;

struct SafetyFactors {
  GaugePressure set;
  GaugePressure supply;
  double at_set_on_yield = 0.0;
  double at_set_on_ultimate = 0.0;
  double at_supply_on_yield = 0.0;
  double at_supply_on_ultimate = 0.0;
  bool set_meets_on_yield() const { return at_set_on_yield >= kAirLiftFactor; }
  bool supply_meets_on_yield() const { return at_supply_on_yield >= kAirLiftFactor; }
};

/// Of the worst panel, or of what single stays hold, at the set pressure and at the full supply pressure with every way
/// out shut.
/// @pre panels not empty
SafetyFactors safety_factors(const std::vector<Panel>& panels, const SheetMetal& metal, GaugePressure set,
                             GaugePressure supply, const std::optional<StayedSurface>& stayed = {});

/// The dial to buy for a pressure.
struct GaugeChoice {
  GaugePressure least_full_scale;           // 1.5 times: ASME BPVC Section VIII Div. 1, UG-102, as reported
  GaugePressure preferred_full_scale;       // 2 times, from memory of UG-102
  GaugePressure most_full_scale;            // 4 times
  std::optional<GaugePressure> full_scale;  // a usual dial in that range; none: too low for a dial, use a water column
  PressureDifference mark;  // widest step between marks: 0.1 psi up to 10 psi, 1 psi to 100 psi, 2 psi above
                            // (International Residential Code P2503.9)
};
/// From the usual dials in psi (ASME B40.100, from memory), which the catalog's gauges have.
GaugeChoice choose_gauge(GaugePressure pressure);

/// A clear hose, hung as a U and half filled with water, as a pressure gauge.
struct WaterColumn {
  Head reading;          // between the two water surfaces at the pressure
  Length leg{};          // height of each leg: reading and 6 in of free hose (common practice)
  Length hose_length{};  // both legs; the way to the port comes on top
};
WaterColumn water_column_for(GaugePressure pressure, Density water);

}  // namespace riserun::reservoir
