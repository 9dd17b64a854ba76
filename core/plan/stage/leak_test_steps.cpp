#include "plan/stage/leak_test_steps.h"

#include "reservoir/pressure_decay.h"

#include <algorithm>
#include <array>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::Texts;

/// Shares of the test pressure and how long each is held. A quarter and a half with some 10 min (ASME PCC-2 Article
/// 501, from memory), then up in shorter steps; the last is held as long as the solution asks, 15 min before anybody
/// looks (ASME BPVC Section V Article 10, I-1071).
struct Rung {
  double share;
  double minutes;
};
constexpr std::array<Rung, 4> kRungs = {{{0.25, 10.0}, {0.5, 10.0}, {0.75, 5.0}, {1.0, 15.0}}};
/// From the first reading to the last, and between readings: common practice.
const Time kHold = minutes(15.0);
const Time kBetweenReadings = minutes(5.0);

bool has_supports(const Supports& supports) {
  return !supports.layout || supports.layout->baffles_across + supports.layout->baffles_along > 0 ||
         supports.layout->lid.has_value();
}

/// All bungs but those that are screwed in.
Texts welded_bungs(const Job& job) {
  Texts names;
  for (const JobPort& port : job.reservoir.ports)
    if (port.bung != reservoir::BungKind::double_tapped_bushing) names.push_back(port.name);
  return names;
}

std::vector<Fact> welds_of(const Inputs& inputs) {
  const reservoir::Box& box = inputs.settled.box;
  const Length round = 2.0 * (box.length + box.width);
  std::vector<Fact> welds = {fact("brush_rig_and_plugs")};
  if (Texts bungs = welded_bungs(inputs.job); !bungs.empty()) welds.push_back(fact("brush_bungs", std::move(bungs)));
  if (has_supports(inputs.job.reservoir.supports)) welds.push_back(fact("brush_supports"));
  welds.push_back(fact("brush_lid", round));
  welds.push_back(fact("brush_corners", box.height));
  welds.push_back(fact("brush_floor", round));
  return welds;
}

Fact feed_step(const Inputs& inputs, const LeakTestPlan& test) {
  const Length standoff = test.energy.standoff;
  if (test.rig->fed_from.empty()) return fact("test_feed_by_hand", standoff);
  const quantity::Facts regulator = {test.regulator
                                         ? fact("regulator_of_the_test", inputs.catalog.part(*test.regulator).name)
                                         : fact("regulator_of_the_job")};
  if (test.throttle)
    return fact("test_feed_throttled", standoff, test.rig->fed_from, inputs.catalog.part(*test.throttle).name,
                regulator);
  return fact("test_feed_from", standoff, test.rig->fed_from, regulator);
}

/// What the air is let down to before anybody goes near with the solution: no more than it works at with people beside
/// it, and well under what it has just stood, as after a code test (ASME BPVC Section VIII UG-100(d): by 1.1, from
/// memory).
GaugePressure brushing_pressure(GaugePressure setting, GaugePressure test) {
  return std::min(setting, gauge_pascals(in_pascals(test) / 1.1));
}

/// On the way the gauge shows what the job's regulator is set to: in use it never does, for the water takes off what it
/// lifts.
void raise_in_rungs(const LeakTestPlan& test, GaugePressure setting, std::vector<Fact>& steps) {
  bool to_mark = regulator_is_marked(test);
  for (std::size_t i = 0; i < test.rungs.size(); ++i) {
    const bool is_last = i + 1 == test.rungs.size();
    if (to_mark && (is_last || test.rungs[i].pressure > setting)) {
      steps.push_back(fact("test_mark_regulator", setting));
      to_mark = false;
    }
    steps.push_back(fact(is_last  ? "test_last_rung"
                         : i == 0 ? "test_first_rung"
                                  : "test_rung",
                         test.rungs[i].pressure, test.rungs[i].hold));
  }
}

void let_down_and_open(const LeakTestPlan& test, std::vector<Fact>& steps) {
  Texts plugged = plugs_to_take_out(test);
  steps.push_back(fact("test_let_down"));
  steps.push_back(plugged.empty() ? fact("test_take_rig_off") : fact("test_unplug", std::move(plugged)));
}

}  // namespace

Texts plugs_to_take_out(const LeakTestPlan& test) {
  Texts ports;
  for (const TestPlug& plug : test.plugs)
    if (!plug.of_job) ports.push_back(plug.port);
  return ports;
}

bool closes_for_good(const LeakTestPlan& test, const std::string& port) {
  return std::any_of(test.plugs.begin(), test.plugs.end(),
                     [&](const TestPlug& plug) { return plug.of_job && plug.port == port; });
}

bool regulator_is_marked(const LeakTestPlan& test) {
  return test.possible && test.rig && test.rig->run() != nullptr && !test.rig->fed_from.empty() &&
         test.by_own_regulator();
}

void time_leak_test(const Inputs& inputs, GaugePressure setting, LeakTestPlan& test) {
  const AbsolutePressure atmosphere = inputs.settled.atmosphere;
  test.brushed_at = brushing_pressure(setting, test.pressure);
  test.drift_per_kelvin = reservoir::drift_per_kelvin(test.brushed_at, atmosphere, inputs.settled.temperature);
  for (const Rung& rung : kRungs)
    test.rungs.push_back({gauge_pascals(in_pascals(test.pressure) * rung.share), minutes(rung.minutes)});
  // At the first somebody goes near, too.
  test.rungs.front().pressure = std::min(test.rungs.front().pressure, setting);
  test.hold = kHold;
  for (Time at = seconds(0.0); at <= kHold; at += kBetweenReadings) test.readings.push_back(at);
  test.least_leak = reservoir::leak_rate(test.air_volume, test.gauge_mark, test.hold, atmosphere);
  test.least_hole =
      reservoir::hole_that_leaks(test.least_leak, test.brushed_at, atmosphere, inputs.settled.temperature);
  if (test.gauge_full_scale > test.pressure)
    test.gauge_error = reservoir::gauge_error(reservoir::shop_gauge_grade(), test.gauge_full_scale, test.pressure);
}

void write_leak_test(const Inputs& inputs, GaugePressure setting, LeakTestPlan& test) {
  std::vector<Fact>& steps = test.steps;
  Texts plugged;
  for (const TestPlug& plug : test.plugs) plugged.push_back(plug.port);
  steps.push_back(fact("test_clean"));
  if (!plugged.empty()) steps.push_back(fact("test_plug", std::move(plugged)));
  if (test.rig) {
    if (test.rig->run() != nullptr) steps.push_back(fact("test_build_rig", test.air_port));
    if (test.rig->relief_stands) steps.push_back(*test.rig->relief_stands);
    steps.push_back(feed_step(inputs, test));
  }
  steps.push_back(fact("test_stand_off", test.energy.standoff));
  raise_in_rungs(test, setting, steps);
  steps.push_back(fact("test_let_down_to_brush", test.brushed_at));
  steps.push_back(fact("test_soak", test.rungs.back().hold));
  steps.push_back(fact("test_read", test.hold));
  const double per_fahrenheit = 1.8;
  steps.push_back(fact("test_drift", test.drift_per_kelvin, pascals(test.drift_per_kelvin.in_si() / per_fahrenheit)));
  const double cubic_centimetres = 1.0e6;
  steps.push_back(fact("test_least_leak", test.gauge_mark, test.hold,
                       in_cubic_metres_per_second(test.least_leak) * cubic_centimetres, test.least_hole));
  steps.push_back(fact("test_leak_found"));
  let_down_and_open(test, steps);
  if (test.compartments > 1) steps.push_back(fact("test_compartments", test.compartments));
  test.welds = welds_of(inputs);
}

// Without steps, for want of a relief valve in the rig, there is nothing to go by.
Fact work_of_leak_test(const LeakTestPlan& test) {
  if (!test.possible) return fact("work_test_with_water");
  return fact(test.steps.empty() ? "work_no_leak_test_yet" : "work_leak_test", test.pressure);
}

Fact work_of_knob(const Plan& plan) {
  const GaugePressure setting = plan.transfer.setting;
  const GaugePressure running = plan.transfer.fill.highest_ullage_pressure;
  const transfer::AirSupply& air = plan.transfer.system.air;
  const GaugePressure behind_springs = setting - air.after_regulator.opens_at();
  if (regulator_is_marked(plan.leak_test))
    return fact("work_regulator_at_its_mark", setting, running, behind_springs + air.lock_up);
  return fact("work_set_regulator", setting, running, behind_springs, behind_springs + air.lock_up);
}

}  // namespace riserun::plan
