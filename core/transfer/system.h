// What a transfer stands on, and where it begins.
#pragma once

#include "hydraulics/fluid.h"
#include "hydraulics/line.h"
#include "reservoir/box.h"

#include <optional>

namespace riserun::transfer {

/// The air supply from the compressor's plate to the reservoir.
struct AirSupply {
  GaugePressure set_pressure;         // of the regulator
  double droop = 0.1;                 // fall of the regulator's outlet at its rated flow, as a share of the setting
  VolumeFlow regulator_rated_flow{};  // free air, fully open; zero: not known, as much as the feed bore passes
  std::optional<VolumeFlow> free_air_delivery;  // of the compressor; none: an unlimited main
  Volume receiver{};                            // zero: none
  GaugePressure receiver_pressure;              // at the start; also the pressure at which the compressor stops
  Length feed_bore{};  // smallest bore between receiver and reservoir (quick-connect, restrictor); zero: closed
  double feed_discharge_coefficient = 0.8;
};

struct Vent {
  Length bore{};
  double discharge_coefficient = 0.6;
  int count = 1;
};

/// Everything that a transfer stands on.
struct System {
  reservoir::Box reservoir;
  reservoir::Table table;
  Length riser_end_height{};  // the riser's lower end above the reservoir's inside floor: the clearance
  Length inlet_height{};      // where the line opens into the table, above the table's floor
  hydraulics::Line line;      // from the riser's lower end to the table
  hydraulics::Water water;
  Temperature temperature;
  AbsolutePressure atmosphere;
  AirSupply air;
  Vent vent;
};

/// Where a transfer begins.
struct Start {
  Length reservoir_depth{};
  Length table_depth{};
  GaugePressure ullage_pressure;  // zero: vented
};

}  // namespace riserun::transfer
