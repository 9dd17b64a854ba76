#include "report/json/run_json.h"

#include "chain/finder.h"
#include "report/json/fact_json.h"
#include "report/json/plain_json.h"
#include "report/json/span_json.h"
#include "report/text/duty_text.h"
#include "report/words/run_words.h"
#include "report/words/say.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Follower;
using chain::Run;
using json = nlohmann::ordered_json;
using What = Follower::What;

json bought_json(const Catalog& catalog, catalog::PartId id, bool from_bin) {
  const catalog::Part& part = catalog.part(id);
  return {{"id", part.id},
          {"name", part.name},
          {"size", part.size},
          {"material", catalog.material(part.material).name},
          {"from_bin", from_bin}};
}

json follower_json(const Catalog& catalog, const Follower& follower) {
  switch (follower.what) {
    case What::part:
      return {{"part", follower.row}};
    case What::end:
      return {{"target", follower.row}};
    case What::plug:
      return {{"plug", bought_json(catalog, follower.plug, follower.from_bin)}};
    case What::inner:
    case What::aside:
      break;
  }
  return json::object();
}

json ports_json(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  json ports = json::array();
  for (std::size_t port = 0; port < link.ports.size(); ++port) {
    if (port == link.enter) continue;
    json entry = {{"port", port}, {"type", catalog.spelled(part.ports[port].type)}};
    entry.update(follower_json(catalog, link.ports[port]));
    ports.push_back(std::move(entry));
  }
  return ports;
}

json plugs_of(const Catalog& catalog, const chain::RunPart& link) {
  json plugs = json::array();
  for (const chain::Follower& plug : link.plugs())
    plugs.push_back({{"id", catalog.part(plug.plug).id}, {"from_bin", plug.from_bin}});
  return plugs;
}

json part_json(const Catalog& catalog, const Run& run, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  json result = bought_json(catalog, link.part, link.from_bin);
  result.update({{"enter", catalog.spelled(part.ports[link.enter].type)},
                 {"enter_port", link.enter},
                 {"closing", part.closing},
                 {"cut_length_m", optional_length(link.cut_length)},
                 {"pieces", link.pieces},
                 {"plugs", plugs_of(catalog, link)},
                 {"ports", ports_json(catalog, link)}});
  if (run.ends.size() == 1)
    result.update({{"leave", catalog.spelled(part.ports[link.leave()].type)}, {"leave_port", link.leave()}});
  return result;
}

json joint_json(const Catalog& catalog, const chain::RunJoint& made) {
  const catalog::MatingRule& rule = catalog.mating_rules()[made.rule];
  return {{"a", catalog.spelled(made.a)},
          {"b", catalog.spelled(made.b)},
          {"seal", rule.seal},
          {"closing", rule.closing},
          {"from_part", made.inner == chain::kBase ? json(nullptr) : json(made.inner)},
          {made.to_end ? "to_target" : "to_part", made.outer},
          {"make_up_m", in_metres(made.make_up)},
          {"make_up_tolerance_m", in_metres(made.make_up_tolerance)}};
}

json end_json(const Catalog& catalog, const Run& run, std::size_t row) {
  const chain::RunEnd& end = run.ends[row];
  return {{"port", catalog.spelled(end.port.type)},
          {"device", end.device ? bought_json(catalog, *end.device, end.from_bin) : json(nullptr)},
          {"smallest_bore_m", optional_length(chain::bore_of_way(catalog, run, row))}};
}

json duty_json(const Catalog& catalog, const chain::Chain& chain) {
  if (chain.parts.empty()) return nullptr;
  static constexpr const char* kVacuum[] = {"not_proved", "stands", "collapses"};
  const chain::RunDuty duty = chain::duty_of_run(catalog, all_parts(chain));
  return {{"air_pa", optional_pressure(duty.air)},
          {"hottest_k", duty.hottest ? json(in_kelvins(*duty.hottest)) : json(nullptr)},
          {"at_hottest_pa", optional_pressure(duty.at_hottest)},
          {"vacuum", kVacuum[static_cast<std::size_t>(duty.vacuum)]}};
}

void add_measures(const Catalog& catalog, const chain::Chain& chain, VolumeFlow flow, json& result) {
  result.update({{"length_m", in_metres(chain.length)},
                 {"length_tolerance_m", in_metres(chain.length_tolerance)},
                 {"head_m", in_metres(chain.head)},
                 {"flow_m3_s", in_cubic_metres_per_second(flow)},
                 {"proved", duty_json(catalog, chain)},
                 {"span", chain.span ? span_json(catalog, chain) : json(nullptr)}});
}

}  // namespace

json run_json(const Catalog& catalog, const Run& run, VolumeFlow flow, UnitSystem units) {
  json parts = json::array();
  for (const chain::RunPart& link : run.parts) parts.push_back(part_json(catalog, run, link));
  json joints = json::array();
  for (const chain::RunJoint& joint : run.joints) joints.push_back(joint_json(catalog, joint));
  json ends = json::array();
  for (std::size_t row = 0; row < run.ends.size(); ++row) ends.push_back(end_json(catalog, run, row));
  json steps = json::array();
  json step_facts = json::array();
  for (const chain::BuildStep& step : run.steps) {
    steps.push_back(say(step.what, UnitSystem::inch));
    step_facts.push_back(fact_json(step.what, units));
  }
  json result = {{"parts", std::move(parts)},
                 {"joints", std::move(joints)},
                 {"ends", std::move(ends)},
                 {"part_count", run.part_count},
                 {"buy_count", run.buy_count},
                 {"price_usd", usd_or_null(run.price)},
                 {"without_price", run.price.without_price()},
                 {"rating_pa", finite(in_pascals(run.rating))},
                 {"air", run.air},
                 {"buildable", run.buildable},
                 {"not_buildable_because", run.buildable ? "" : kNotBuildable},
                 {"steps", std::move(steps)},
                 {"step_facts", std::move(step_facts)},
                 {"kept", facts_json(run.kept, units)},
                 {"cautions", say_all(run.cautions, UnitSystem::inch)},
                 {"caution_facts", facts_json(run.cautions, units)}};
  if (run.ends.size() == 1) add_measures(catalog, run, flow, result);
  return result;
}

}  // namespace riserun::report
