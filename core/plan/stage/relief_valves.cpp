#include "plan/stage/relief_valves.h"

#include "hydraulics/air.h"

#include <algorithm>

namespace riserun::plan {

namespace {

constexpr double kValveDischarge = 0.6;  // of a plain port: common practice where the maker gives none

/// Air from the supply through the narrowest place of its way, with the regulator wide open.
class FailedSupply {
 public:
  FailedSupply(const Inputs& inputs, const std::vector<Way>& ways, const transfer::AirSupply& air)
      : settled_(inputs.settled), discharge_(air.feed_discharge_coefficient), bore_(air.feed_bore) {
    for (const Way& way : ways)
      if (way.use == WayUse::feed) bore_ = std::min(bore_, way.bore().value_or(bore_));
  }

  GaugePressure pressure() const { return settled_.full_supply; }

  MassFlow into(GaugePressure held) const { return through(bore_, discharge_, pressure(), held); }
  MassFlow let_out(Length bore, GaugePressure held) const { return through(bore, kValveDischarge, held, psig(0.0)); }

  /// Of a hole on the supply side, and of a valve on the reservoir, that pass that much.
  Length restrictor(MassFlow flow, GaugePressure held) const {
    return hydraulics::bore_for_air_flow(flow, discharge_, abs(pressure()), abs(held), settled_.temperature);
  }
  Length valve(MassFlow flow, GaugePressure held) const {
    return hydraulics::bore_for_air_flow(flow, kValveDischarge, abs(held), abs(psig(0.0)), settled_.temperature);
  }

  VolumeFlow free_air(MassFlow flow) const {
    return hydraulics::free_air_of_mass_flow(flow, settled_.atmosphere, settled_.temperature);
  }

 private:
  AbsolutePressure abs(GaugePressure pressure) const { return absolute(pressure, settled_.atmosphere); }
  MassFlow through(Length bore, double discharge, GaugePressure from, GaugePressure to) const {
    if (from <= to) return kilograms_per_second(0.0);
    return hydraulics::orifice_air_flow(hydraulics::effective_area(bore, discharge), abs(from), abs(to),
                                        settled_.temperature);
  }

  const Settled& settled_;
  double discharge_;
  Length bore_;
};

PressureDifference code_rise(GaugePressure opens) { return std::max(kCodeRise, (opens - psig(0.0)) * kCodeRiseShare); }

/// Where it is fully open at the latest.
GaugePressure full_flow_of(const JobReliefValve& given, const std::string& connection, GaugePressure opens,
                           Remarks& remarks) {
  if (!given.tolerance) remarks.assume(fact("relief_tolerance", connection, kCodeTolerance), "relief valve.tolerance");
  if (!given.rise) remarks.assume(fact("relief_rise", connection, code_rise(opens)), "relief valve.rise");
  return opens + given.tolerance.value_or(kCodeTolerance) + given.rise.value_or(code_rise(opens));
}

ReliefValve valve_on(const Inputs& inputs, const Way& way, const FailedSupply& supply, Remarks& remarks) {
  const catalog::Part& part = inputs.catalog.part(*way.device);
  ReliefValve valve;
  valve.connection = way.branched ? way.end : way.connection;
  valve.opens = *relief_setting(inputs.catalog, *way.device);
  valve.full_flow = full_flow_of(inputs.job.relief_valve, valve.connection, valve.opens, remarks);
  valve.own_bore = part.ports[0].bore;
  valve.bore = std::min(valve.own_bore, way.bore().value_or(valve.own_bore));
  const MassFlow passes = supply.let_out(valve.bore, valve.full_flow);
  const MassFlow given = supply.into(valve.full_flow);
  valve.passes = supply.free_air(passes);
  valve.supply = supply.free_air(given);
  if (supply.pressure() <= valve.full_flow) return valve;
  valve.restrictor = supply.restrictor(passes, valve.full_flow);
  valve.needed_bore = supply.valve(given, valve.full_flow);
  return valve;
}

}  // namespace

std::vector<ReliefValve> relief_valves(const Inputs& inputs, const std::vector<Way>& ways,
                                       const transfer::AirSupply& air, Remarks& remarks) {
  const FailedSupply supply(inputs, ways, air);
  std::vector<ReliefValve> valves;
  for (const Way& way : ways)
    if (way.use == WayUse::relief) valves.push_back(valve_on(inputs, way, supply, remarks));
  return valves;
}

GaugePressure greatest_pressure(const Inputs& inputs, const std::vector<Way>& ways, const transfer::AirSupply& air,
                                const std::vector<ReliefValve>& valves) {
  const FailedSupply supply(inputs, ways, air);
  const auto holds = [&](GaugePressure held) {
    double out = 0.0;
    for (const ReliefValve& valve : valves)
      if (valve.full_flow <= held) out += in_kilograms_per_second(supply.let_out(valve.bore, held));
    return out >= in_kilograms_per_second(supply.into(held));
  };
  GaugePressure high = supply.pressure();
  if (valves.empty()) return high;
  GaugePressure low = std::min_element(valves.begin(), valves.end(), [](const ReliefValve& a, const ReliefValve& b) {
                        return a.full_flow < b.full_flow;
                      })->full_flow;
  if (low >= high || holds(low)) return std::min(low, high);
  // What comes in falls with the pressure and what goes out rises.
  constexpr int kHalvings = 50;
  for (int i = 0; i < kHalvings; ++i) {
    const GaugePressure middle = low + (high - low) * 0.5;
    (holds(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace riserun::plan
