#include "plan/stage/leak_test.h"

#include "plan/judge/limits.h"
#include "plan/stage/leak_test_steps.h"
#include "plan/stage/test_air.h"
#include "plan/stage/test_relief.h"
#include "plan/stage/test_rig.h"
#include "plan/stage/test_supply.h"
#include "reservoir/test_pressure.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace riserun::plan {

namespace {

/// Every part of a shop's plumbing that stands on the reservoir while it is tested.
std::vector<const JobPort*> ports_to_close(const Job& job) {
  std::vector<const JobPort*> ports;
  for (const JobPort& port : job.reservoir.ports) ports.push_back(&port);
  return ports;
}

bool is_fed(const chain::AssemblyRequest& request) {
  return std::any_of(request.branches.begin(), request.branches.end(),
                     [](const chain::BranchRules& branch) { return branch.flow == chain::BranchFlow::to_base; });
}

/// The port that the test air goes in by: the air connection's, or else the smallest one.
const JobPort* test_air_port(const Job& job, const std::vector<ConnectionPlan>& connections) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.service != Service::air || connection.to.empty() || connection.ends_in) continue;
    if (connection.branched && !is_fed(*connection.branched)) continue;
    for (const std::string& name : {connection.to, connection.from})
      if (const JobPort* port = port_named(job.reservoir.ports, name)) return port;
  }
  return job.reservoir.ports.empty() ? nullptr : &job.reservoir.ports.back();
}

/// Bays that nothing passes between; one where the job says nothing of tight baffles.
int compartments_of(const Supports& supports) {
  if (!supports.layout || supports.passages.value_or(true)) return 1;
  return (supports.layout->baffles_across + 1) * (supports.layout->baffles_along + 1);
}

/// The dial, the relief valve and the rig that holds them.
void put_rig_on(const Inputs& inputs, const chain::Finder& finder, const std::vector<ConnectionPlan>& connections,
                const JobPort& port, const Tested& tested, LeakTestPlan& test, BinLeft& left) {
  // No relief valve passes the walls' limit, however the pressure was printed and typed.
  const GaugePressure limit = tested.walls.limit;
  test.at_supply = lent_at_supply(inputs.catalog, tested.ways);
  reach_test_pressure(inputs, test);
  const TestDial dial = dial_for_test(inputs, connections, test.pressure,
                                      test.by_own_regulator() ? std::optional(tested.setting) : std::nullopt);
  const GaugePressure most = std::min(limit, gauge_pascals(in_pascals(test.relief) / kAsPrinted));
  const std::vector<PartId> reliefs = reliefs_for_test(inputs, connections, test.pressure, most);
  test.gauge_of_job = dial.of_job;
  test.gauge_full_scale = dial.parts.empty() ? psig(0.0) : *full_scale(inputs.catalog, dial.parts.front());
  if (!reliefs.empty()) {
    test.relief_opens = relief_setting(inputs.catalog, reliefs.front());
    test.relief = std::max(test.relief, *test.relief_opens);  // one that passes it by less than its print shows
  }
  if (!reliefs.empty() && !test.at_supply.empty())
    size_relief_of_test(inputs, tested.system, reliefs.front(), limit, test);
  take_for_supply(test, left);
  // No finding hangs on the rig, and it takes a search; without its relief valve nobody builds one up.
  if (inputs.upto != Upto::end || !test.relief_opens) return;
  test.rig = plan_test_rig(inputs, finder, connections, {port, dial.parts, reliefs, !test.at_supply.empty()}, left);
  join_up_at_supply(inputs, finder, connections, test, left);
}

void caution_rig(const LeakTestPlan& test, Remarks& remarks) {
  if (test.rig && test.rig->run() == nullptr)
    remarks.caution(Topic::leak_test,
                    fact("no_rig_goes_on_port", test.air_port, std::get<chain::NoAssembly>(test.rig->answer).reason),
                    "catalog");
}

void caution_leak_test(const LeakTestPlan& test, Remarks& remarks) {
  remarks.standing_caution(Topic::leak_test,
                           fact("test_air_can_kill", std::max(test.energy.standoff, reservoir::kLeastStandoff)),
                           "ASME PCC-2 Article 501; ASME BPVC Section VIII UG-100 (from memory)");
  remarks.standing_caution(Topic::leak_test, fact("use_leak_test_solution"), "ASME BPVC Section V Article 10");
  remarks.standing_caution(Topic::leak_test, fact("water_lessens_stored_energy"), "common practice");
}

void refuse_test(const Job& job, const reservoir::TestPressure& chosen, GaugePressure limit, Remarks& remarks) {
  const auto& asked = job.test_pressure;
  if (chosen.pressure) return;
  if (asked) {
    remarks.refuse({Topic::leak_test, chosen.basis, Against{*asked, limit}, fact("leave_test_pressure_out")})
        .ways_to_mend = {{{"test pressure", ""}}};
  } else {
    remarks.caution(Topic::leak_test, chosen.basis, "worked out");
  }
}

}  // namespace

namespace {

/// A port that is closed by a plug for good is tested with that one.
void take_plugs_of_job(const Catalog& catalog, const std::vector<ConnectionPlan>& connections,
                       std::vector<TestPlug>& plugs) {
  for (TestPlug& plug : plugs)
    for (const ConnectionPlan& connection : connections) {
      const chain::Run* run = connection.from == plug.port ? connection.run() : nullptr;
      if (run == nullptr || !run->parts.empty() || !run->ends.front().device) continue;
      const catalog::Part& device = catalog.part(*run->ends.front().device);
      if (catalog.family(device.family).role == catalog::Role::plug)
        plug = {plug.port, run->ends.front().device, run->ends.front().from_bin, true};
    }
}

}  // namespace

LeakTestPlan plan_leak_test(const Inputs& inputs, const chain::Finder& finder,
                            const std::vector<ConnectionPlan>& connections, std::vector<TestPlug> plugs,
                            const Tested& tested, BinLeft& left, Remarks& remarks) {
  LeakTestPlan test;
  const Job& job = inputs.job;
  const GaugePressure limit = tested.walls.limit;
  // A relief valve lets it come higher than the setting; without one nothing does but a failure.
  GaugePressure in_use = tested.setting;
  for (const ReliefValve& valve : tested.relief.valves)  // one that is too small for the supply is not tested against
    in_use = std::max(in_use, std::min(tested.relief.greatest, valve.full_flow));
  const AbsolutePressure atmosphere = inputs.settled.atmosphere;
  test.air_volume = inputs.settled.box.capacity();
  test.given = job.test_pressure.has_value();
  const reservoir::TestPressure chosen =
      test.given
          ? reservoir::check_test_pressure(*job.test_pressure, limit, test.air_volume, atmosphere)
          : reservoir::choose_test_pressure(in_use, limit, tested.walls.four_to_one, test.air_volume, atmosphere);
  test.possible = chosen.pressure.has_value();
  test.pressure = chosen.pressure.value_or(psig(0.0));
  test.basis = chosen.basis;
  test.gauge_full_scale = chosen.gauge.full_scale.value_or(psig(0.0));
  test.gauge_mark = chosen.gauge.mark;
  test.water_column_leg = reservoir::water_column_for(test.pressure, inputs.settled.water.density).leg;
  // What lets in air at the code's pressure makes a pressure vessel of the tank.
  test.relief = std::min(chosen.relief, gauge_pascals(in_pascals(kCodePressure) * kAsPrinted * kAsPrinted));
  test.energy = chosen.energy;
  test.lid_force = reservoir::support_loads(inputs.settled.box, {}, test.pressure).lid;
  const Volume ullage_up = test.air_volume - inputs.settled.box.volume_at(tested.levels.reservoir_depth_up);
  test.energy_in_use = reservoir::stored_energy(tested.setting, ullage_up, atmosphere);
  const JobPort* air = test_air_port(job, connections);
  if (air != nullptr) test.air_port = air->name;
  test.plugs = std::move(plugs);
  take_plugs_of_job(inputs.catalog, connections, test.plugs);
  test.compartments = compartments_of(job.reservoir.supports);
  if (test.possible) {
    if (air != nullptr) put_rig_on(inputs, finder, connections, *air, tested, test, left);
    time_leak_test(inputs, tested.setting, test);
    // On a port that takes no rig each of its parts goes on by hand; without a relief valve in the line no air goes in.
    if (air == nullptr || test.relief_opens) write_leak_test(inputs, tested.setting, test);
  }
  caution_rig(test, remarks);
  refuse_test(job, chosen, limit, remarks);
  caution_leak_test(test, remarks);
  return test;
}

std::vector<const JobPort*> ports_to_plug(const Job& job, const std::vector<ConnectionPlan>& connections) {
  std::vector<const JobPort*> ports = ports_to_close(job);
  std::erase(ports, test_air_port(job, connections));
  return ports;
}

std::vector<chain::EndPart> closing_parts(const Inputs& inputs, PortTypeId port) {
  const Catalog& catalog = inputs.catalog;
  std::vector<PartId> closing;
  for (const catalog::Mate& mate : catalog.mates(port)) {
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      if (is_sold_for_air(catalog, use.part) &&
          catalog.family(catalog.part(use.part).family).role == catalog::Role::plug)
        closing.push_back(use.part);
    }
  }
  const auto rank = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return std::tuple(!part.stocked, part.price.weight(), part.id);
  };
  std::sort(closing.begin(), closing.end(), [&](PartId a, PartId b) { return rank(a) < rank(b); });
  std::vector<chain::EndPart> ends;
  for (bool have_one = false; const PartId part : closing) {
    const bool buy = !std::exchange(have_one, true);
    if (buy || inputs.job.bin.count_of(part) > 0) ends.push_back({part, {}, buy});
  }
  return ends;
}

}  // namespace riserun::plan
