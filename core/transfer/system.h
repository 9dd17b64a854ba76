// What a transfer stands on, and where it begins.
#pragma once

#include "hydraulics/air_line.h"
#include "hydraulics/fluid.h"
#include "hydraulics/line.h"
#include "reservoir/box.h"

#include <optional>
#include <vector>

namespace riserun::transfer {

/// A regulator before the regulator. It holds its setting where the supply lets it, and takes nothing of its own: its
/// droop is a tenth of what the one behind it does not need.
struct FirstStage {
  GaugePressure setting;
  hydraulics::AirLine behind{};  // from it to the regulator: the last of `before_regulator`
};

/// The air supply from the compressor's plate to the reservoir: receiver, feed bore, what stands before the regulator,
/// regulator, what stands behind it.
struct AirSupply {
  GaugePressure set_pressure;         // of the regulator
  double droop = 0.1;                 // fall of the regulator's outlet at its rated flow, as a share of the setting
  VolumeFlow regulator_rated_flow{};  // free air, fully open; zero: not known, as much as the feed bore passes
  std::optional<VolumeFlow> free_air_delivery;  // of the compressor; none: an unlimited main
  Volume receiver{};                            // zero: none
  GaugePressure receiver_pressure;              // at the start; also the pressure at which the compressor stops
  Length feed_bore{};  // smallest bore between receiver and regulator (quick-connect); zero: closed
  double feed_discharge_coefficient = 0.8;
  hydraulics::AirLine before_regulator{};  // beyond the feed bore: a restrictor
  std::optional<FirstStage> first_stage{};
  hydraulics::AirLine after_regulator{};  // on to the reservoir
  PressureDifference repeatability{};     // of its setting, plus or minus; in the range of the times
  PressureDifference lock_up{};           // rise of the regulator's outlet over the setting until it shuts tight
};

struct Vent {
  Length bore{};
  double discharge_coefficient = 0.6;
  int count = 1;
  std::vector<hydraulics::AirLine> ways{};  // out of the reservoir, side by side; any: they count, and not the bore
};

/// The mouth by which the table drains, in its floor: shallow water falls over its rim as over a weir.
struct Mouth {
  Length bore{};  // zero: the line alone says what leaves, to the last drop
  Length film{};  // over it: at that depth the table counts as drained
};

/// What lets the water only up: a check valve in the line, a foot valve under the riser.
struct WaterCheck {
  bool one_way = false;
  PressureDifference opens_at{};  // that must stand over it before water moves
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
  Mouth mouth{};
  WaterCheck check{};
  bool dip_uncovers_riser = false;  // the riser draws air as soon as the dip of the surface reaches its end
};

/// Where a transfer begins.
struct Start {
  Length reservoir_depth{};
  Length table_depth{};
  GaugePressure ullage_pressure;  // zero: vented
};

}  // namespace riserun::transfer
