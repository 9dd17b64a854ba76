#include "plan/stage/relief.h"

#include "plan/stage/relief_valves.h"
#include "reservoir/relief.h"
#include "transfer/failed_regulator.h"

namespace riserun::plan {

namespace {

reservoir::AirFeed feed_of(const Settled& settled, const transfer::AirSupply& air) {
  return {settled.full_supply, air.feed_bore, air.feed_discharge_coefficient, settled.temperature};
}

}  // namespace

ReliefPlan plan_relief(const Inputs& inputs, const std::vector<Way>& ways, const WallsPlan& walls,
                       const TransferPlan& transfer, Remarks& remarks) {
  const GaugePressure limit = walls.limit;
  ReliefPlan relief;
  const GaugePressure set = transfer.setting;
  // Where the setting is refused already there is no room for a valve above it: it is shown at the limit.
  relief.set_pressure = reservoir::relief_setting(set, limit).value_or(limit);
  if (relief.set_pressure > psig(0.0)) {
    const reservoir::Relief valve = reservoir::relief_for(
        relief.set_pressure, limit, feed_of(inputs.settled, transfer.system.air), inputs.settled.atmosphere);
    relief.must_pass = valve.must_pass;
    relief.valve_bore = valve.valve_bore;
  }
  const transfer::FailedRegulator failed =
      transfer::failed_regulator_pressure(transfer.system, inputs.settled.full_supply);
  relief.failed_regulator_pressure = failed.highest;
  if (limit > psig(0.0))
    relief.restrictor_bore = transfer::restrictor_bore(transfer.system, inputs.settled.full_supply, limit);
  relief.valves = relief_valves(inputs, ways, transfer.system.air, remarks);
  relief.given = !relief.valves.empty();
  relief.greatest = greatest_pressure(inputs, ways, transfer.system.air, relief.valves);
  relief.factor_at_greatest =
      reservoir::safety_factors(walls.panels, walls.metal, relief.greatest, walls.full_supply).at_set_on_yield;
  remarks.standing_caution(Topic::relief, fact("relief_valve_on_the_reservoir"),
                           "California Code of Regulations, Title 8, section 465 (from memory)");
  if (failed.highest > limit)
    remarks.caution(Topic::relief, fact("riser_is_not_relief_enough", failed.highest, limit), "worked out");
  return relief;
}

}  // namespace riserun::plan
