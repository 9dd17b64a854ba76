#include "chain/finder.h"
#include "report/json/fact_json.h"
#include "report/text/assembly_text.h"
#include "report/words/say.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::PortTypeId;
using chain::Assembly;
using chain::AssemblyRequest;
using chain::Follower;
using json = nlohmann::ordered_json;
using What = Follower::What;

json follower_json(const Catalog& catalog, const Follower& follower) {
  switch (follower.what) {
    case What::part:
      return {{"part", follower.row}};
    case What::end:
      return {{"target", follower.row}};
    case What::plug: {
      const catalog::Part& plug = catalog.part(follower.plug);
      return {{"plug",
               {{"id", plug.id},
                {"name", plug.name},
                {"size", plug.size},
                {"material", catalog.material(plug.material).name},
                {"from_bin", follower.from_bin}}}};
    }
    case What::inner:
    case What::aside:
      break;
  }
  return json::object();
}

json part_json(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  json ports = json::array();
  for (std::size_t port = 0; port < link.ports.size(); ++port) {
    if (port == link.enter) continue;
    json entry = {{"port", port}, {"type", catalog.spelled(part.ports[port].type)}};
    entry.update(follower_json(catalog, link.ports[port]));
    ports.push_back(std::move(entry));
  }
  return {{"id", part.id},
          {"name", part.name},
          {"size", part.size},
          {"material", catalog.material(part.material).name},
          {"enter", catalog.spelled(part.ports[link.enter].type)},
          {"enter_port", link.enter},
          {"from_bin", link.from_bin},
          {"closing", part.closing},
          {"ports", std::move(ports)}};
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

json end_json(const Catalog& catalog, const Assembly& assembly, std::size_t target) {
  const chain::RunEnd& end = assembly.ends[target];
  const auto bore = chain::bore_of_way(catalog, assembly, target);
  json result = {{"port", catalog.spelled(end.port.type)},
                 {"device", nullptr},
                 {"smallest_bore_m", bore ? json(in_metres(*bore)) : json(nullptr)}};
  if (!end.device) return result;
  const catalog::Part& part = catalog.part(*end.device);
  result["device"] = {{"id", part.id},
                      {"name", part.name},
                      {"size", part.size},
                      {"material", catalog.material(part.material).name},
                      {"from_bin", end.from_bin}};
  return result;
}

json found_json(const Catalog& catalog, const Assembly& assembly) {
  json parts = json::array();
  for (const chain::RunPart& link : assembly.parts) parts.push_back(part_json(catalog, link));
  json joints = json::array();
  for (const chain::RunJoint& joint : assembly.joints) joints.push_back(joint_json(catalog, joint));
  json ends = json::array();
  for (std::size_t row = 0; row < assembly.ends.size(); ++row) ends.push_back(end_json(catalog, assembly, row));
  json steps = json::array();
  for (const chain::BuildStep& step : assembly.steps) steps.push_back(say(step.what, UnitSystem::inch));
  return {{"parts", std::move(parts)},
          {"joints", std::move(joints)},
          {"ends", std::move(ends)},
          {"part_count", assembly.part_count},
          {"buy_count", assembly.buy_count},
          {"price_usd", in_dollars(assembly.price)},
          {"rating_pa", in_pascals(assembly.rating)},
          {"air", assembly.air},
          {"buildable", true},
          {"steps", std::move(steps)},
          {"cautions", say_all(assembly.cautions, UnitSystem::inch)}};
}

json none_json(const Catalog& catalog, const chain::NoAssembly& none, UnitSystem units) {
  json result = {{"reason", say(none.reason, units)},
                 {"why", fact_json(none.reason, units)},
                 {"targets", none.targets},
                 {"special_order", nullptr},
                 {"missing_part", nullptr},
                 {"lookalikes", json::array()},
                 {"mends", say_all(none.mends, units)},
                 {"mend_facts", facts_json(none.mends, units)}};
  if (!none.way) return result;
  if (none.way->special_order) result["special_order"] = catalog.part(*none.way->special_order).id;
  if (none.way->missing_part) result["missing_part"] = say(*none.way->missing_part, units);
  result["lookalikes"] = say_all(none.way->look_alikes, units);
  return result;
}

}  // namespace

std::string assembly_json(const Catalog& catalog, const AssemblyRequest& request, const chain::AssemblyAnswer& answer,
                          UnitSystem units) {
  // Where a device ends a branch, its port is known once it is chosen.
  const Assembly* found = std::get_if<Assembly>(&answer);
  json ports = json::array({catalog.spelled(request.rules.from.type)});
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    const bool known = found != nullptr || request.branch(row).devices.empty();
    const PortTypeId type = found ? found->ends[row].port.type : request.targets[row].type;
    ports.push_back(known ? json(catalog.spelled(type)) : json(nullptr));
  }
  json result = {{"ports", std::move(ports)}, {"assemblies", json::array()}, {"why_none", nullptr}};
  if (const Assembly* assembly = std::get_if<Assembly>(&answer))
    result["assemblies"].push_back(found_json(catalog, *assembly));
  else
    result["why_none"] = none_json(catalog, std::get<chain::NoAssembly>(answer), units);
  return result.dump(1) + "\n";
}

}  // namespace riserun::report
