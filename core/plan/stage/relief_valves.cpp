#include "plan/stage/relief_valves.h"

#include "hydraulics/air.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// Where it is fully open at the latest.
GaugePressure full_flow_of(const JobReliefValve& given, const std::string& connection, GaugePressure opens,
                           Remarks& remarks) {
  if (!given.tolerance) remarks.assume(fact("relief_tolerance", connection, kCodeTolerance), "relief valve.tolerance");
  if (!given.rise) remarks.assume(fact("relief_rise", connection, code_rise(opens)), "relief valve.rise");
  return opens + given.tolerance.value_or(kCodeTolerance) + given.rise.value_or(code_rise(opens));
}

ReliefValve valve_on(const Inputs& inputs, const Way& way, const transfer::System& system,
                     const transfer::ReliefValve& flowing, Remarks& remarks) {
  const GaugePressure supply = inputs.settled.full_supply;
  ReliefValve valve;
  valve.connection = way.branched ? way.end : way.connection;
  valve.opens = *relief_setting(inputs.catalog, *way.device);
  valve.full_flow = full_flow_of(inputs.job.relief_valve, valve.connection, valve.opens, remarks);
  valve.own_bore = flowing.bore;
  valve.bore = std::min(valve.own_bore, way.bore().value_or(valve.own_bore));
  const auto free_air = [&](MassFlow flow) {
    return hydraulics::free_air_of_mass_flow(flow, system.atmosphere, system.temperature);
  };
  const AbsolutePressure held = absolute(valve.full_flow, system.atmosphere);
  valve.passes = free_air(flowing.flow(valve.full_flow, system.atmosphere, system.temperature));
  if (supply <= valve.full_flow) return valve;
  const MassFlow given = transfer::line_with_failed_regulator(system.air)
                             .flow(absolute(supply, system.atmosphere), held, system.temperature);
  valve.supply = free_air(given);
  valve.restrictor = transfer::restrictor_bore(system, supply, valve.full_flow, {flowing}).value_or(metres(0.0));
  valve.needed_bore =
      hydraulics::bore_for_air_flow(given, flowing.discharge_coefficient, held, system.atmosphere, system.temperature);
  return valve;
}

}  // namespace

PressureDifference code_rise(GaugePressure opens) { return std::max(kCodeRise, (opens - psig(0.0)) * kCodeRiseShare); }

std::vector<ReliefValve> relief_valves(const Inputs& inputs, const std::vector<Way>& ways,
                                       const transfer::System& system,
                                       const std::vector<transfer::ReliefValve>& flowing, Remarks& remarks) {
  std::vector<ReliefValve> valves;
  for (const Way& way : ways)
    if (way.use == WayUse::relief) valves.push_back(valve_on(inputs, way, system, flowing[valves.size()], remarks));
  return valves;
}

GaugePressure greatest_pressure(GaugePressure riser_stopped, GaugePressure supply,
                                const std::vector<ReliefValve>& valves) {
  if (valves.empty()) return supply;
  const auto first = std::min_element(valves.begin(), valves.end(), [](const ReliefValve& a, const ReliefValve& b) {
    return a.full_flow < b.full_flow;
  });
  return std::max(riser_stopped, std::min(supply, first->full_flow));
}

}  // namespace riserun::plan
