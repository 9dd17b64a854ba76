#include "plan/stage/test_relief.h"

#include "hydraulics/air.h"
#include "hydraulics/air_line.h"
#include "plan/sold.h"
#include "plan/stage/relief_valves.h"
#include "plan/stage/restrictors.h"
#include "quantity/nearly.h"
#include "transfer/failed_regulator.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using catalog::Role;

Role role_of(const Catalog& catalog, PartId part) { return catalog.family(catalog.part(part).family).role; }

/// It was tried on the bench before it went into the rig, and opens at its mark unless the job says what such a valve
/// is off by. The rig's cross takes of its flow what an opening of its own bore takes.
transfer::ReliefValve flowing(const Inputs& inputs, PartId valve) {
  constexpr double kCross = 0.8;  // common practice
  const catalog::Part& part = inputs.catalog.part(valve);
  const JobReliefValve& given = inputs.job.relief_valve;
  const GaugePressure mark = *relief_setting(inputs.catalog, valve);
  const GaugePressure opens = mark + given.tolerance.value_or(PressureDifference());
  return {hydraulics::AirLine({hydraulics::air_opening("rig", part.ports[0].bore, kCross)}), part.ports[0].bore, opens,
          opens + given.rise.value_or(code_rise(mark))};
}

}  // namespace

std::vector<RigPart> lent_at_supply(const Catalog& catalog, const std::vector<Way>& ways) {
  for (const Way& way : ways) {
    const auto last = last_regulator(catalog, way);
    if (way.use != WayUse::feed || last == way.parts.end()) continue;
    std::vector<RigPart> lent;
    for (auto part = way.parts.begin(); part != last + 1; ++part)
      if (role_of(catalog, part->part) == Role::restrictor || role_of(catalog, part->part) == Role::regulator)
        lent.push_back({part->part, RigPart::Whose::job});
    return lent;
  }
  return {};
}

void reach_test_pressure(const Inputs& inputs, LeakTestPlan& test) {
  if (test.at_supply.empty()) return;
  const Catalog& catalog = inputs.catalog;
  const PartId last = test.at_supply.back().part;  // the regulator that sets the pressure
  const auto reaches = [&](PartId part) {
    const auto& range = catalog.part(part).full_scale;
    return !range || quantity::at_most(test.pressure, *range);
  };
  if (reaches(last)) return;
  test.regulator =
      regulator_for_inlet(catalog, regulator_range_for(catalog, test.pressure), catalog.part(last).ports[0].type);
  if (test.regulator && reaches(*test.regulator)) {
    test.at_supply.back() = {*test.regulator, RigPart::Whose::bought};
    return;
  }
  test.regulator.reset();
  test.at_supply.clear();
}

void size_relief_of_test(const Inputs& inputs, const transfer::System& system, PartId valve, GaugePressure limit,
                         LeakTestPlan& test) {
  const GaugePressure supply = inputs.settled.full_supply;
  const transfer::ReliefValve relief = flowing(inputs, valve);
  const GaugePressure held = std::min(limit, relief.wide_open);
  transfer::System rig = system;
  rig.air.after_regulator = {};  // the test hose leads straight to the rig
  const AbsolutePressure behind = absolute(held, system.atmosphere);
  const MassFlow passes = relief.flow(held, system.atmosphere, system.temperature);
  const MassFlow gives = supply > held ? transfer::line_with_failed_regulator(rig.air).flow(
                                             absolute(supply, system.atmosphere), behind, system.temperature)
                                       : MassFlow();
  const auto free_air = [&](MassFlow flow) {
    return hydraulics::free_air_of_mass_flow(flow, system.atmosphere, system.temperature);
  };
  test.relief_passes = free_air(passes);
  test.supply_gives = free_air(gives);
  test.relief_is_enough = gives <= passes;
  if (test.relief_is_enough) return;
  rig.air.before_regulator = {};  // the job's own restrictor makes room for the smaller one
  const auto widest = transfer::restrictor_bore(rig, supply, held, {relief});
  if (!widest) return;
  test.throttle_bore = *widest;
  const std::vector<RigPart>& parts = test.at_supply;
  const auto regulator = std::find_if(parts.begin(), parts.end(), [&](const RigPart& each) {
    return role_of(inputs.catalog, each.part) == Role::regulator;
  });
  test.throttle = restrictor_up_to(inputs, inlet_of_regulator(inputs, regulator->part), *widest);
  if (!test.throttle) return;
  test.relief_is_enough = true;
  std::erase_if(test.at_supply,
                [&](const RigPart& each) { return role_of(inputs.catalog, each.part) == Role::restrictor; });
  test.at_supply.insert(test.at_supply.begin(), {*test.throttle, RigPart::Whose::bought});
}

void take_for_supply(LeakTestPlan& test, BinLeft& left) {
  for (RigPart& each : test.at_supply)
    if (each.whose == RigPart::Whose::bought && left.take(each.part)) each.whose = RigPart::Whose::bin;
}

}  // namespace riserun::plan
