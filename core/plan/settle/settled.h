// The job with nothing missing: what was given, and for what was not an assumption that is written down.
#pragma once

#include "hydraulics/fluid.h"
#include "plan/job/job.h"
#include "plan/remarks.h"
#include "reservoir/box.h"
#include "reservoir/walls.h"
#include "transfer/transfer.h"

#include <string>
#include <vector>

namespace riserun::plan {

struct Settled {
  reservoir::Box box;
  reservoir::Table table;
  reservoir::SheetMetal metal;
  Length wall_thickness{};  // what is counted on: a gauge's least, less what may rust away
  Length baffle_plate{};    // of baffles that are put in: of the sheet, or thicker so that the lid is welded to them
  Stress design_stress;
  quantity::Fact design_stress_basis;
  Length obstacle_height{};
  bool lid_closed = false;
  transfer::AirSupply air;                     // all but the setting
  GaugePressure regulator_range;               // full scale
  PressureDifference regulator_repeatability;  // plus or minus, of what it comes back to
  GaugePressure full_supply;                   // what the walls see if the regulator fails and nothing gives way
  transfer::Vent vent;
  PressureDifference check_valve{};  // that opens one, where the catalog does not say
  Temperature temperature;
  Temperature warmest;  // that the shut air space comes to, and the coldest
  Temperature coldest;
  hydraulics::Water water;
  AbsolutePressure atmosphere;
  chain::Order order = chain::Order::line;
};

/// What a baffle takes up, whatever of it is counted on.
Length thickness_of_baffles(const Job& job, const Settled& settled);

/// Fills in what the job leaves out, and states each assumption with its reason.
Settled settle(const Job& job, Remarks& remarks);

}  // namespace riserun::plan
