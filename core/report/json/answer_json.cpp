#include "report/json/answer_json.h"

#include "report/json/fact_json.h"
#include "report/json/plain_json.h"
#include "report/json/run_json.h"
#include "report/words/reason.h"
#include "report/words/say.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::Catalog;
using json = nlohmann::ordered_json;

json lifts_json(const std::vector<chain::Lift>& lifts, UnitSystem units) {
  static constexpr const char* kBy[] = {"part", "rule", "freedom", "several_rules"};
  json list = json::array();
  for (const chain::Lift& lift : lifts)
    list.push_back({{"by", kBy[static_cast<std::size_t>(lift.by)]},
                    {"text", words_of(lift, units)},
                    {"part_count", lift.part_count},
                    {"buy_count", lift.buy_count},
                    {"price_usd", usd_or_null(lift.price)},
                    {"without_price", lift.price.without_price()},
                    {"what", facts_json(lift.what, units)}});
  return list;
}

json conflict_json(const quantity::Facts& rules, UnitSystem units) {
  json list = json::array();
  for (const quantity::Fact& rule : rules) {
    const json told = fact_json(rule, units);
    list.push_back({{"rule", told["code"]}, {"text", told["text"]}, {"values", told["values"]}});
  }
  return list;
}

json none_json(const Catalog& catalog, const chain::NoChain& none, UnitSystem units) {
  return {{"reason", say(none.reason, units)},
          {"why", fact_json(none.reason, units)},
          {"reachable_from", spelled_ports(catalog, none.reachable_from)},
          {"reachable_to", spelled_ports(catalog, none.reachable_to)},
          {"special_order", none.special_order ? json(catalog.part(*none.special_order).id) : json(nullptr)},
          {"missing_part", none.missing_part ? json(say(*none.missing_part, units)) : json(nullptr)},
          {"to_buy", ids_of(catalog, none.to_buy)},
          {"lookalikes", say_all(none.look_alikes, units)},
          {"nearest_below_m", optional_length(none.nearest_below)},
          {"nearest_above_m", optional_length(none.nearest_above)},
          {"mends", say_all(none.mends, units)},
          {"mend_facts", facts_json(none.mends, units)},
          {"conflict", conflict_json(none.conflict, units)},
          {"lifts", lifts_json(none.lifts, units)}};
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

json substitute_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Substitute& substitute,
                     UnitSystem units) {
  return {{"instead_of", catalog.part(substitute.instead_of).id},
          {"buy_also", ids_of(catalog, substitute.buy_also)},
          {"put_back", ids_of(catalog, substitute.put_back)},
          {"chain", substitute.chain ? run_json(catalog, *substitute.chain, request.flow, units) : json(nullptr)}};
}

}  // namespace

json answer_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                 UnitSystem units) {
  json result = {{"ports", spelled_ports(catalog, {request.from.type, request.to.type})},
                 {"chains", json::array()},
                 {"why_none", nullptr}};
  if (const chain::Chain* chain = std::get_if<chain::Chain>(&answer))
    result["chains"].push_back(run_json(catalog, *chain, request.flow, units));
  else
    result["why_none"] = none_json(catalog, std::get<chain::NoChain>(answer), units);
  return result;
}

json answer_json(const Catalog& catalog, const chain::AssemblyRequest& request, const chain::AssemblyAnswer& answer,
                 UnitSystem units) {
  // Where a device ends a branch, its port is known once it is chosen.
  const chain::Assembly* found = std::get_if<chain::Assembly>(&answer);
  json ports = json::array({catalog.spelled(request.rules.from.type)});
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    const bool known = found != nullptr || request.branch(row).devices.empty();
    const chain::PortTypeId type = found ? found->ends[row].port.type : request.targets[row].type;
    ports.push_back(known ? json(catalog.spelled(type)) : json(nullptr));
  }
  json result = {{"ports", std::move(ports)}, {"assemblies", json::array()}, {"why_none", nullptr}};
  if (found != nullptr)
    result["assemblies"].push_back(run_json(catalog, *found, VolumeFlow{}, units));
  else
    result["why_none"] = none_json(catalog, std::get<chain::NoAssembly>(answer), units);
  return result;
}

void add_spares(const Catalog& catalog, const chain::Spares& spares, const std::vector<std::string>& names,
                json& object) {
  json list = json::array();
  for (std::size_t i = 0; i < spares.parts.size(); ++i) {
    const catalog::PartId spare = spares.parts[i];
    if (i > 0 && spares.parts[i - 1] == spare) continue;
    const catalog::Part& part = catalog.part(spare);
    const auto quantity = static_cast<int>(std::count(spares.parts.begin(), spares.parts.end(), spare));
    json covers = json::array();
    for (const chain::StockOut& out : spares.stock_outs)
      if (std::find(out.spares.begin(), out.spares.end(), spare) != out.spares.end())
        covers.push_back(catalog.part(out.missing).id);
    list.push_back({{"id", part.id},
                    {"name", part.name},
                    {"qty", quantity},
                    {"price_usd", usd_or_null(part.price * quantity)},
                    {"covers", covers}});
  }
  json outs = json::array();
  for (const chain::StockOut& out : spares.stock_outs) {
    json stand_in = json::array();
    for (const chain::RunPart& link : out.stand_in.parts) stand_in.push_back(catalog.part(link.part).id);
    outs.push_back({{"missing", catalog.part(out.missing).id},
                    {"connection", names.empty() ? json(nullptr) : json(names[out.chosen])},
                    {"spares", ids_of(catalog, out.spares)},
                    {"stand_in", stand_in},
                    {"only_itself", out.only_itself}});
  }
  object["spares"] = list;
  object["spares_usd"] = usd_or_null(spares.price);
  object["spares_without_price"] = spares.price.without_price();
  object["stock_outs"] = outs;
}

std::string chain_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                       UnitSystem units, const chain::Spares* spares) {
  json result = answer_json(catalog, request, answer, units);
  if (spares != nullptr) add_spares(catalog, *spares, {}, result);
  return written_json(result);
}

std::string assembly_json(const Catalog& catalog, const chain::AssemblyRequest& request,
                          const chain::AssemblyAnswer& answer, UnitSystem units) {
  return written_json(answer_json(catalog, request, answer, units));
}

std::string alternatives_json(const Catalog& catalog, const chain::ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, UnitSystem units,
                              const chain::Spares* spares) {
  json result = {{"ports", spelled_ports(catalog, {request.from.type, request.to.type})},
                 {"chains", json::array()},
                 {"why_none", nullptr},
                 {"shelf_empty", json::array()}};
  for (const chain::Alternative& row : rows) {
    json chain = run_json(catalog, row.chain, request.flow, units);
    const bool is_best = &row == rows.data();
    chain["reason"] = is_best ? kBestOfAll : reason(rows.front().chain, row.chain, quantity::UnitSystem::inch);
    chain["same_in"] = row.same_in;
    result["chains"].push_back(std::move(chain));
  }
  for (const chain::Substitute& substitute : substitutes)
    result["shelf_empty"].push_back(substitute_json(catalog, request, substitute, units));
  if (spares != nullptr) add_spares(catalog, *spares, {}, result);
  return written_json(result);
}

}  // namespace riserun::report
