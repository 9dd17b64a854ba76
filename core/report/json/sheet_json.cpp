#include "report/json/sheet_json.h"

#include "report/json/fact_json.h"
#include "report/json/run_json.h"
#include "report/words/say.h"
#include "report/words/step_lists.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;
using plan::RigPart;

std::string_view owner_key(RigPart::Whose whose) {
  switch (whose) {
    case RigPart::Whose::job:
      return "job";
    case RigPart::Whose::bin:
      return "bin";
    case RigPart::Whose::bought:
      break;
  }
  return "buy";
}

json rig_part_json(const catalog::Catalog& catalog, catalog::PartId part) {
  return {{"id", catalog.part(part).id}, {"name", catalog.part(part).name}};
}

json test_ports_json(const plan::Plan& plan) {
  const plan::LeakTestPlan& test = plan.leak_test;
  json ports = json::array();
  if (!test.air_port.empty()) ports.push_back({{"port", test.air_port}, {"inlet", true}});
  for (const plan::TestPlug& plug : test.plugs)
    ports.push_back({{"port", plug.port},
                     {"plug", plug.part ? json(plan.catalog->part(*plug.part).id) : json(nullptr)},
                     {"from_bin", plug.from_bin}});
  return ports;
}

json rig_json(const plan::Plan& plan, UnitSystem units) {
  const auto& rig = plan.leak_test.rig;
  const chain::Run* run = rig ? rig->run() : nullptr;
  if (run == nullptr) return nullptr;
  json parts = json::array();
  for (const RigPart& part : rig->parts) {
    parts.push_back(rig_part_json(*plan.catalog, part.part));
    parts.back()["from"] = owner_key(part.whose);
  }
  json at_supply = json::array();
  for (const RigPart& part : plan.leak_test.at_supply) {
    at_supply.push_back(rig_part_json(*plan.catalog, part.part));
    at_supply.back()["from"] = owner_key(part.whose);
  }
  return {{"parts", std::move(parts)},
          {"fed_from", rig->fed_from},
          {"at_supply", std::move(at_supply)},
          {"relief_stands", rig->relief_stands ? json(say(*rig->relief_stands, units)) : json(nullptr)},
          {"run", run_json(*plan.catalog, *run, rig->request.rules.flow, units)}};
}

json readings_json(const std::vector<Time>& readings) {
  json list = json::array();
  for (const Time& at : readings)
    list.push_back({{"after_s", in_seconds(at)}, {"gauge_pa", nullptr}, {"air_k", nullptr}, {"metal_k", nullptr}});
  return list;
}

}  // namespace

json leak_test_object(const plan::Plan& plan, UnitSystem units) {
  const plan::LeakTestPlan& test = plan.leak_test;
  if (!test.possible) return nullptr;
  json rungs = json::array();
  for (const plan::TestRung& rung : test.rungs)
    rungs.push_back({{"pressure_pa", in_pascals(rung.pressure)}, {"hold_s", in_seconds(rung.hold)}});
  json steps = json::array();
  for (const Fact& step : test.steps) steps.push_back(say(step, units));
  return {{"pressure_pa", in_pascals(test.pressure)},
          {"brushed_at_pa", in_pascals(test.brushed_at)},
          {"ports", test_ports_json(plan)},
          {"rig", rig_json(plan, units)},
          {"gauge",
           {{"full_scale_pa", in_pascals(test.gauge_full_scale)},
            {"of_job", test.gauge_of_job},
            {"error_pa", test.gauge_error.in_si()},
            {"mark_pa", test.gauge_mark.in_si()}}},
          {"rungs", std::move(rungs)},
          {"steps", std::move(steps)},
          {"step_facts", facts_json(test.steps, units)},
          {"welds", facts_json(test.welds, units)},
          {"hold_s", in_seconds(test.hold)},
          {"readings", readings_json(test.readings)},
          {"drift_pa_per_k", test.drift_per_kelvin.in_si()},
          {"least_leak_m3_s", in_cubic_metres_per_second(test.least_leak)},
          {"least_hole_m", in_metres(test.least_hole)},
          {"compartments", test.compartments},
          {"stored_energy_j", in_joules(test.energy.energy)},
          {"standoff_m", in_metres(test.energy.standoff)}};
}

json work_array(const plan::Plan& plan, UnitSystem units) {
  json steps = json::array();
  for (const plan::WorkStep& step : plan.work.steps)
    steps.push_back({{"phase", key_of(step.phase)},
                     {"for", step.of},
                     {"number", step.number},
                     {"text", say(step.what, units)},
                     {"fact", fact_json(step.what, units)}});
  return steps;
}

}  // namespace riserun::report
