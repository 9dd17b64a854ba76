#include "plan/stage/relief.h"

#include "reservoir/relief.h"
#include "transfer/failed_regulator.h"

#include <algorithm>

namespace riserun::plan {

namespace {

reservoir::AirFeed feed_of(const Settled& settled, const transfer::AirSupply& air) {
  return {settled.full_supply, air.feed_bore, air.feed_discharge_coefficient, settled.temperature};
}

/// It passes what the narrowest place lets through, whether that is its own bore or its way's.
void judge_relief_bore(const Inputs& inputs, const ReliefPlan& relief, const Way& way, Remarks& remarks) {
  const Length own = inputs.catalog.part(*way.device).ports[0].bore;
  const Length bore = std::min(own, way.bore().value_or(own));
  if (!relief.valve_bore || bore >= *relief.valve_bore) return;
  const Fact mend =
      relief.restrictor_bore ? fact("restrictor_in_the_feed", *relief.restrictor_bore) : fact("use_a_larger_valve");
  remarks.caution(Topic::relief,
                  bore < own ? fact("relief_valve_fed_too_narrow", way.connection, own, *relief.valve_bore, mend, bore)
                             : fact("relief_valve_too_narrow", way.connection, own, *relief.valve_bore, mend),
                  "worked out");
}

void judge_relief_valve(const Inputs& inputs, GaugePressure limit, GaugePressure set, const ReliefPlan& relief,
                        const Way& way, GaugePressure opens, Remarks& remarks) {
  if (opens > limit) {
    remarks.refuse({Topic::relief, fact("relief_valve_opens_above_limit", way.connection), Against{opens, limit},
                    fact("valve_that_opens_at", relief.set_pressure)});
  } else if (opens < set) {
    remarks.caution(Topic::relief, fact("relief_valve_blows_in_use", way.connection, opens, set), "worked out");
  }
  judge_relief_bore(inputs, relief, way, remarks);
}

/// The job's own relief valves and gauges against what they must do.
void judge_devices(const Inputs& inputs, GaugePressure limit, GaugePressure set, const std::vector<Way>& ways,
                   ReliefPlan& relief, Remarks& remarks) {
  for (const Way& way : ways) {
    if (!way.device) continue;
    if (const auto opens = relief_setting(inputs.catalog, *way.device)) {
      relief.given = true;
      judge_relief_valve(inputs, limit, set, relief, way, *opens, remarks);
    }
    const auto scale = full_scale(inputs.catalog, *way.device);
    if (scale && in_pascals(*scale) > 4.0 * in_pascals(set))
      remarks.caution(Topic::relief,
                      fact("gauge_too_coarse", way.connection, *scale, set, gauge_pascals(1.5 * in_pascals(set)),
                           gauge_pascals(4.0 * in_pascals(set))),
                      "ASME BPVC Section VIII UG-102: 1.5 to 4 times");
  }
  if (!relief.given)
    remarks.caution(Topic::relief, fact("no_relief_valve"),
                    "California Code of Regulations, Title 8, section 465 (from memory)");
}

}  // namespace

ReliefPlan plan_relief(const Inputs& inputs, const std::vector<Way>& ways, GaugePressure limit,
                       const TransferPlan& transfer, Remarks& remarks) {
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
  judge_devices(inputs, limit, set, ways, relief, remarks);
  remarks.standing_caution(Topic::relief, fact("relief_valve_on_the_reservoir"),
                           "California Code of Regulations, Title 8, section 465 (from memory)");
  if (failed.highest > limit)
    remarks.caution(Topic::relief, fact("riser_is_not_relief_enough", failed.highest, limit), "worked out");
  return relief;
}

}  // namespace riserun::plan
