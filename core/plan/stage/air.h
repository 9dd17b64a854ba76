// The ways of the air as rows of resistances: from the receiver to the reservoir, out of its vents, to its relief
// valves.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"
#include "transfer/failed_regulator.h"

#include <vector>

namespace riserun::plan {

struct AirWays {
  hydraulics::AirLine before_regulator;  // beyond the feed bore
  hydraulics::AirLine after_regulator;
  std::vector<hydraulics::AirLine> vents;     // through connections; empty: the job's own vent counts
  std::vector<transfer::ReliefValve> relief;  // of the job
  std::vector<GaugePressure> gauge_scales;    // of the gauges that the knob may be set by: nothing shuts before them
  std::optional<PartId> regulator;            // that stands in the run
  std::optional<PartId> first_stage;          // the regulator before it
  hydraulics::AirLine behind_first_stage;     // from that to the regulator: the last of before_regulator
  transfer::WaterCheck water_check;           // in the water's line, or under the riser
  bool water_comes_up = true;                 // into the table, not from its side
};

/// The first connection that feeds the reservoir, split at its regulator; without one in it all of the run stands
/// behind the regulator. A trunk that ways share counts in full for each: they seldom flow at once.
AirWays find_air_ways(const Inputs& inputs, const std::vector<Way>& ways, const ConnectionPlan* water,
                      Remarks& remarks);

/// In the middle of its range, where a regulator holds best, and at least so far over the one behind it, which is set
/// already, that that one holds its own (common practice). Nothing where there is no first stage.
void set_first_stage(const Catalog& catalog, const AirWays& air, transfer::AirSupply& supply);

/// Where the air's pressure goes at the greatest flow of the fill.
AirPlan plan_air(const transfer::System& system, const transfer::Fill& fill);

}  // namespace riserun::plan
