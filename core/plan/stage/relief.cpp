#include "plan/stage/relief.h"

#include "chain/finder.h"
#include "quantity/write.h"
#include "reservoir/relief.h"
#include "transfer/failed_regulator.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

reservoir::AirFeed feed_of(const Settled& settled, const transfer::AirSupply& air) {
  return {settled.full_supply, air.feed_bore, air.feed_discharge_coefficient, settled.temperature};
}

/// A relief valve or gauge as it stands in the job: what is screwed on, where, and how narrow its way is.
struct FittedDevice {
  PartId part;
  std::string where;  // "'air manifold'"
  std::optional<Length> way;
};

std::vector<FittedDevice> fitted_devices(const Catalog& catalog, const std::vector<ConnectionPlan>& connections) {
  std::vector<FittedDevice> devices;
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr) continue;
    for (std::size_t row = 0; row < connection.run()->ends.size(); ++row)
      if (const auto& part = connection.run()->ends[row].device)
        devices.push_back(
            {*part, fmt::format("'{}'", connection.name), chain::bore_of_way(catalog, *connection.run(), row)});
  }
  return devices;
}

/// It passes what the narrowest place lets through, whether that is its own bore or its way's.
void judge_relief_bore(const Inputs& inputs, const ReliefPlan& relief, const FittedDevice& device, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  const Length own = inputs.catalog.part(device.part).ports[0].bore;
  const Length bore = std::min(own, device.way.value_or(own));
  if (!relief.valve_bore || bore >= *relief.valve_bore) return;
  remarks.caution(
      Topic::relief,
      fmt::format("The relief valve of {} has a bore of {}{}; passing all that the supply gives with the regulator "
                  "failed open takes {}. {}",
                  device.where, write_thickness(own, units, 2),
                  bore < own ? " and is fed through " + write_thickness(bore, units, 2) : "",
                  write_thickness(*relief.valve_bore, units, 2),
                  relief.restrictor_bore ? fmt::format("Put a restrictor of {} in the feed.",
                                                       write_thickness(*relief.restrictor_bore, units, 2))
                                         : "Use a larger one."),
      "worked out");
}

void judge_relief_valve(const Inputs& inputs, GaugePressure limit, GaugePressure set, const ReliefPlan& relief,
                        const FittedDevice& device, GaugePressure opens, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  if (opens > limit) {
    remarks.refuse({Topic::relief,
                    fmt::format("the relief valve of {} opens above what the walls may see", device.where),
                    write_pressure(opens, units), write_pressure(limit, units),
                    fmt::format("one that opens at {}", write_pressure(relief.set_pressure, units))});
  } else if (opens < set) {
    remarks.caution(
        Topic::relief,
        fmt::format("The relief valve of {} opens at {}, below the set pressure of {}: it will blow in use.",
                    device.where, write_pressure(opens, units), write_pressure(set, units)),
        "worked out");
  }
  judge_relief_bore(inputs, relief, device, remarks);
}

/// The job's own relief valves and gauges against what they must do.
void judge_devices(const Inputs& inputs, GaugePressure limit, GaugePressure set,
                   const std::vector<FittedDevice>& devices, ReliefPlan& relief, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  for (const FittedDevice& device : devices) {
    if (const auto opens = opens_at(inputs.catalog, device.part)) {
      relief.given = true;
      judge_relief_valve(inputs, limit, set, relief, device, *opens, remarks);
    }
    const auto scale = full_scale(inputs.catalog, device.part);
    if (scale && in_pascals(*scale) > 4.0 * in_pascals(set))
      remarks.caution(Topic::relief,
                      fmt::format("The gauge of {} reads to {}: too coarse for {}. Take one that reads to {} to {}.",
                                  device.where, write_pressure_alone(*scale, units), write_pressure_alone(set, units),
                                  write_pressure_alone(gauge_pascals(1.5 * in_pascals(set)), units),
                                  write_pressure_alone(gauge_pascals(4.0 * in_pascals(set)), units)),
                      "ASME BPVC Section VIII UG-102: 1.5 to 4 times");
  }
  if (!relief.given)
    remarks.caution(Topic::relief,
                    "No connection gives the reservoir a relief valve: it needs one, on a port of its own.",
                    "California Code of Regulations, Title 8, section 465 (from memory)");
}

}  // namespace

ReliefPlan plan_relief(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, GaugePressure limit,
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
  judge_devices(inputs, limit, set, fitted_devices(inputs.catalog, connections), relief, remarks);
  remarks.standing_caution(
      Topic::relief,
      "Put the relief valve on the reservoir itself with no valve between: a shut valve or a stopped riser puts "
      "all of the regulator's pressure on the walls.",
      "California Code of Regulations, Title 8, section 465 (from memory)");
  if (failed.highest > limit)
    remarks.caution(
        Topic::relief,
        fmt::format("If the regulator fails open, the feed can hold {} with the riser open; the walls may see {}. "
                    "The riser is not relief enough.",
                    write_pressure(failed.highest, inputs.job.units), write_pressure(limit, inputs.job.units)),
        "worked out");
  return relief;
}

}  // namespace riserun::plan
