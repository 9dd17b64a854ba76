#include "plan/stage/prove_relief.h"

#include "plan/judge/dials.h"
#include "plan/stage/leak_test_steps.h"
#include "plan/stage/relief_valves.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// The port that the way's connection leaves from.
std::string port_of(const Plan& plan, const Way& way) {
  const ConnectionPlan* found = connection_named(plan.connections, way.connection);
  return found == nullptr ? std::string() : found->from;
}

/// Out of a side the valve stands upright on an elbow, which goes on with it.
Fact what_goes_on(const Plan& plan, const std::string& name) {
  const JobPort* port = port_named(plan.job.reservoir.ports, name);
  return fact(port != nullptr && port->place == Place::side ? "the_valve_on_its_elbow" : "the_valve_alone");
}

/// What the gauge of the leak test may be off there; of a water column nothing that matters.
PressureDifference gauge_off(const LeakTestPlan& test, GaugePressure read) {
  const bool by_dial = test.gauge_full_scale > psig(0.0);
  return by_dial ? dial_error(test.gauge_full_scale, read) : PressureDifference();
}

/// A gauge that is off by more than half of what the valve may be cannot tell a good valve from a bad one (common
/// practice: a test gauge is right to a quarter of what it proves).
constexpr double kGaugeOverTolerance = 0.5;
constexpr double kTestGaugeOverTolerance = 0.25;

}  // namespace

std::vector<Proof> relief_proofs(const Inputs& inputs, const Plan& plan) {
  std::vector<Proof> proofs;
  const LeakTestPlan& test = plan.leak_test;
  auto valve = plan.relief.valves.begin();
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::relief) continue;
    const ReliefValve& proved = *valve++;
    const PressureDifference off = inputs.job.relief_valve.tolerance.value_or(kCodeTolerance);
    const GaugePressure least = psig(0.0) + std::max(PressureDifference(), proved.opens - off - psig(0.0));
    const GaugePressure most = proved.opens + off;
    const std::string port = port_of(plan, way);
    const bool rig_first = test.relief_opens && quantity::at_most(*test.relief_opens, most);
    if (!regulator_is_marked(test) || way.branched || port == test.air_port || rig_first)
      proofs.push_back({fact("work_bench_test_relief", proved.connection, least, most), way.connection});
    else if (quantity::more_than(most, test.pressure))
      proofs.push_back(
          {fact("work_bench_test_relief_over_test", proved.connection, least, most, test.pressure), way.connection});
    else if (const PressureDifference error = gauge_off(test, most);
             quantity::more_than(error, off * kGaugeOverTolerance))
      proofs.push_back({fact("work_bench_test_relief_by_finer_gauge", proved.connection, least, most, error,
                             off * kTestGaugeOverTolerance),
                        way.connection});
    else
      proofs.push_back({fact("work_prove_relief", proved.connection, port, test.energy.standoff, least, most,
                             test.pressure, plan.transfer.setting, what_goes_on(plan, port)),
                        way.connection, port});
  }
  return proofs;
}

void put_proofs_on_sheet(const Inputs& inputs, Plan& plan) {
  std::vector<Fact>& steps = plan.leak_test.steps;
  const auto off = std::find_if(steps.begin(), steps.end(), [](const Fact& step) {
    return step.code == "test_unplug" || step.code == "test_take_rig_off";
  });
  if (off == steps.end()) return;
  std::vector<Fact> proved;
  std::vector<Fact> on_a_bench;
  quantity::Texts plugged = plugs_to_take_out(plan.leak_test);
  for (const Proof& proof : relief_proofs(inputs, plan)) {
    (proof.on_the_tank() ? proved : on_a_bench).push_back(proof.what);
    if (proof.on_the_tank()) std::erase(plugged, proof.port);
  }
  if (!proved.empty()) {
    *off = plugged.empty() ? fact("test_take_rig_off") : fact("test_unplug", std::move(plugged));
    steps.insert(off, proved.begin(), proved.end());
  }
  steps.insert(steps.end(), on_a_bench.begin(), on_a_bench.end());
}

}  // namespace riserun::plan
