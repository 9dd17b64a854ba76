#include "report/json/plan_json.h"

#include "chain/finder.h"
#include "report/figures/figures.h"
#include "report/json/fact_json.h"
#include "report/json/figures_json.h"
#include "report/json/span_json.h"
#include "report/text/assembly_text.h"
#include "report/text/duty_text.h"
#include "report/text/plan_text.h"
#include "report/words/list_words.h"
#include "report/words/plan_keys.h"
#include "report/words/reason.h"
#include "report/words/remark_words.h"
#include "report/words/run_words.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace riserun::report {

namespace {

using catalog::Catalog;
using json = nlohmann::ordered_json;
using plan::Plan;

/// JSON has no infinity: a time that never comes is null.
json finite(double value) { return std::isfinite(value) ? json(value) : json(nullptr); }

json optional_length(const std::optional<Length>& value) { return value ? json(in_metres(*value)) : json(nullptr); }

json optional_pressure(const std::optional<GaugePressure>& value) {
  return value ? json(in_pascals(*value)) : json(nullptr);
}

json spelled_ports(const Catalog& catalog, const std::vector<catalog::PortTypeId>& ports) {
  json list = json::array();
  for (const catalog::PortTypeId port : ports) list.push_back(catalog.spelled(port));
  return list;
}

json ids_of(const Catalog& catalog, const std::vector<catalog::PartId>& parts) {
  json ids = json::array();
  for (const catalog::PartId part : parts) ids.push_back(catalog.part(part).id);
  return ids;
}

json plugs_of(const Catalog& catalog, const chain::RunPart& link) {
  json plugs = json::array();
  for (const chain::Follower& plug : link.plugs())
    plugs.push_back({{"id", catalog.part(plug.plug).id}, {"from_bin", plug.from_bin}});
  return plugs;
}

json duty_json(const Catalog& catalog, const chain::Chain& chain) {
  if (chain.parts.empty()) return nullptr;
  static constexpr const char* kVacuum[] = {"not_proved", "stands", "collapses"};
  const chain::RunDuty duty = chain::duty_of_run(catalog, all_parts(chain));
  return {{"air_pa", optional_pressure(duty.air)},
          {"hottest_k", duty.hottest ? json(in_kelvins(*duty.hottest)) : json(nullptr)},
          {"vacuum", kVacuum[static_cast<std::size_t>(duty.vacuum)]}};
}

json found_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Chain& chain) {
  json parts = json::array();
  for (const chain::RunPart& link : chain.parts) {
    const catalog::Part& part = catalog.part(link.part);
    parts.push_back({{"id", part.id},
                     {"name", part.name},
                     {"size", part.size},
                     {"material", catalog.material(part.material).name},
                     {"enter", catalog.spelled(part.ports[link.enter].type)},
                     {"leave", catalog.spelled(part.ports[link.leave()].type)},
                     {"enter_port", link.enter},
                     {"leave_port", link.leave()},
                     {"from_bin", link.from_bin},
                     {"closing", part.closing},
                     {"cut_length_m", optional_length(link.cut_length)},
                     {"pieces", link.pieces},
                     {"plugs", plugs_of(catalog, link)}});
  }
  json joints = json::array();
  for (const chain::RunJoint& joint : chain.joints) {
    const catalog::MatingRule& rule = catalog.mating_rules()[joint.rule];
    joints.push_back({{"a", catalog.spelled(joint.a)},
                      {"b", catalog.spelled(joint.b)},
                      {"seal", rule.seal},
                      {"closing", rule.closing},
                      {"make_up_m", in_metres(joint.make_up)},
                      {"make_up_tolerance_m", in_metres(joint.make_up_tolerance)}});
  }
  json steps = json::array();
  for (const chain::BuildStep& step : chain.steps) steps.push_back(say(step.what, UnitSystem::inch));
  return {{"parts", parts},
          {"joints", joints},
          {"part_count", chain.part_count},
          {"buy_count", chain.buy_count},
          {"price_usd", in_dollars(chain.price)},
          {"length_m", in_metres(chain.length)},
          {"length_tolerance_m", in_metres(chain.length_tolerance)},
          {"head_m", in_metres(chain.head)},
          {"flow_m3_s", in_cubic_metres_per_second(request.flow)},
          {"rating_pa", finite(in_pascals(chain.rating))},
          {"air", chain.air},
          {"proved", duty_json(catalog, chain)},
          {"buildable", chain.buildable},
          {"not_buildable_because", chain.buildable ? "" : kNotBuildable},
          {"steps", steps},
          {"span", chain.span ? json::parse(span_object(catalog, chain)) : json(nullptr)},
          {"cautions", say_all(chain.cautions, UnitSystem::inch)}};
}

json lifts_json(const std::vector<chain::Lift>& lifts, UnitSystem units) {
  static constexpr const char* kBy[] = {"part", "rule", "freedom", "several_rules"};
  json list = json::array();
  for (const chain::Lift& lift : lifts)
    list.push_back({{"by", kBy[static_cast<std::size_t>(lift.by)]},
                    {"text", words_of(lift, units)},
                    {"part_count", lift.part_count},
                    {"buy_count", lift.buy_count},
                    {"price_usd", in_dollars(lift.price)},
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

json answer_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                 UnitSystem units) {
  json result = {{"ports", spelled_ports(catalog, {request.from.type, request.to.type})},
                 {"chains", json::array()},
                 {"why_none", nullptr}};
  if (const chain::Chain* chain = std::get_if<chain::Chain>(&answer))
    result["chains"].push_back(found_json(catalog, request, *chain));
  else
    result["why_none"] = none_json(catalog, std::get<chain::NoChain>(answer), units);
  return result;
}

json substitute_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Substitute& substitute) {
  return {{"instead_of", catalog.part(substitute.instead_of).id},
          {"buy_also", ids_of(catalog, substitute.buy_also)},
          {"put_back", ids_of(catalog, substitute.put_back)},
          {"chain", substitute.chain ? found_json(catalog, request, *substitute.chain) : json(nullptr)}};
}

/// @param names  of the connections, by StockOut::chosen; empty: there is one chain and it has no name
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
                    {"price_usd", in_dollars(part.price * quantity)},
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
  object["spares_usd"] = in_dollars(spares.price);
  object["stock_outs"] = outs;
}

json riser_object(const reservoir::Riser& riser, UnitSystem units) {
  return {
      {"cut_length_m", in_metres(riser.cut_length)},
      {"clearance_m", in_metres(riser.clearance)},
      {"clearance_low_m", in_metres(riser.clearance_low)},
      {"clearance_high_m", in_metres(riser.clearance_high)},
      {"make_up_m", in_metres(riser.make_up)},
      {"heel_m3", in_cubic_metres(riser.heel)},
      {"curtain_to_bore", riser.curtain_to_bore},
      {"inlet_k", riser.inlet.entry_k},
      {"inlet_k_scatter", riser.inlet.scatter},
      {"stock", {{"length_m", optional_length(riser.stock)}, {"uncut_length_m", optional_length(riser.stock_uncut)}}},
      {"offcut_m", in_metres(riser.offcut)},
      {"can_be_drawn_out", riser.can_be_drawn_out},
      {"refusals", say_all(riser.refusals, units)},
      {"refusal_facts", facts_json(riser.refusals, units)},
      {"notes", say_all(riser.notes, units)},
      {"note_facts", facts_json(riser.notes, units)}};
}

std::string stop_name(transfer::Stop stop) {
  switch (stop) {
    case transfer::Stop::goal_reached:
      return "goal_reached";
    case transfer::Stop::riser_uncovered:
      return "riser_uncovered";
    case transfer::Stop::pressures_balance:
      return "pressures_balance";
    case transfer::Stop::table_overflows:
      return "table_overflows";
    case transfer::Stop::time_limit:
      return "time_limit";
    case transfer::Stop::reservoir_full:
      return "reservoir_full";
  }
  return "";
}

std::string walk_away_name(transfer::WalkAway verdict) {
  switch (verdict) {
    case transfer::WalkAway::water_stops_below_rim:
      return "water_stops_below_rim";
    case transfer::WalkAway::table_overflows:
      return "table_overflows";
    case transfer::WalkAway::air_blows_through:
      return "air_blows_through";
  }
  return "";
}

json losses_json(const std::vector<hydraulics::ElementLoss>& losses) {
  json list = json::array();
  for (const hydraulics::ElementLoss& loss : losses)
    list.push_back({{"element", loss.element},
                    {"k", finite(loss.k)},
                    {"velocity_m_s", in_metres_per_second(loss.velocity)},
                    {"head_m", in_metres(loss.head)},
                    {"source", loss.source}});
  return list;
}

json history_json(const std::vector<transfer::Instant>& history) {
  json list = json::array();
  for (const transfer::Instant& instant : history)
    list.push_back({{"time_s", in_seconds(instant.time)},
                    {"reservoir_depth_m", in_metres(instant.reservoir_depth)},
                    {"table_depth_m", in_metres(instant.table_depth)},
                    {"ullage_pressure_pa", in_pascals(instant.ullage_pressure)},
                    {"flow_m3_s", in_cubic_metres_per_second(instant.flow)}});
  return list;
}

json common_json(const transfer::Transfer& transfer) {
  return {{"stop", stop_name(transfer.stop)},
          {"time_s", finite(in_seconds(transfer.time))},
          {"time_low_s", finite(in_seconds(transfer.time_low))},
          {"time_high_s", finite(in_seconds(transfer.time_high))},
          {"volume_m3", in_cubic_metres(transfer.volume)},
          {"mean_flow_m3_s", in_cubic_metres_per_second(transfer.mean_flow)},
          {"peak_flow_m3_s", in_cubic_metres_per_second(transfer.peak_flow)},
          {"free_air_m3", in_cubic_metres(transfer.free_air)},
          {"table_depth_m", in_metres(transfer.table_depth)},
          {"reservoir_depth_m", in_metres(transfer.reservoir_depth)},
          {"highest_ullage_pressure_pa", in_pascals(transfer.highest_ullage_pressure)},
          {"limited_by", transfer.limited_by},
          {"losses_at_peak", losses_json(transfer.losses_at_peak)},
          {"history", history_json(transfer.history)}};
}

json transfer_object(const Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  const transfer::Drain& drain = plan.transfer.drain;
  json filling = common_json(fill);
  filling.update({{"pressure_to_start_pa", in_pascals(fill.pressure_to_start)},
                  {"hold_pressure_pa", in_pascals(fill.hold_pressure)},
                  {"pressure_to_finish_pa", in_pascals(fill.pressure_to_finish)},
                  {"set_pressure_pa", in_pascals(plan.transfer.setting)},
                  {"walls_limit_pa", in_pascals(plan.walls.limit)},
                  {"coast_up_m", in_metres(fill.coast_up)},
                  {"shut_off_depth_m", in_metres(fill.shut_off_depth)},
                  {"margin_over_riser_end_m", in_metres(fill.margin_over_riser_end)},
                  {"walk_away", walk_away_name(fill.walk_away)},
                  {"walk_away_spill_m3", in_cubic_metres(fill.walk_away_spill)},
                  {"self_limiting_pressure_pa", optional_pressure(fill.self_limiting_pressure)}});
  json draining = common_json(drain);
  draining["left_in_table_m3"] = in_cubic_metres(drain.left_in_table);
  return {{"fill", filling}, {"drain", draining}, {"losses", losses_json(fill.losses_at_mean)}};
}

json walls_object(const Plan& plan) {
  json panels = json::array();
  for (const reservoir::PanelResult& result : plan.walls.at_set.panels)
    panels.push_back({{"name", result.panel.name},
                      {"length_m", in_metres(result.panel.length)},
                      {"width_m", in_metres(result.panel.width)},
                      {"thickness_m", in_metres(result.panel.thickness)},
                      {"stress_pa", in_pascals(std::max(result.stress_held, result.stress_free))},
                      {"stress_held_pa", in_pascals(result.stress_held)},
                      {"stress_free_pa", in_pascals(result.stress_free)},
                      {"bulge_m", in_metres(result.bulge_free)},
                      {"bulge_held_m", in_metres(result.bulge_held)},
                      {"small_deflection", result.small_deflection},
                      {"limit_pa", in_pascals(result.limit)}});
  const reservoir::StoredEnergy& energy = plan.leak_test.energy;
  return {{"panels", panels},
          {"checked_at_pa", in_pascals(plan.walls.at_set.pressure)},
          {"design_stress_pa", in_pascals(plan.walls.at_set.design_stress)},
          {"limit_pa", in_pascals(plan.walls.limit)},
          {"factor_at_set", plan.walls.factor_at_set},
          {"factor_at_full_supply", plan.walls.factor_at_full_supply},
          {"relief",
           {{"set_pressure_pa", in_pascals(plan.relief.set_pressure)},
            {"must_pass_m3_s", in_cubic_metres_per_second(plan.relief.must_pass)},
            {"failed_regulator_pressure_pa", optional_pressure(plan.relief.failed_regulator_pressure)},
            {"restrictor_bore_m", optional_length(plan.relief.restrictor_bore)},
            {"valve_bore_m", optional_length(plan.relief.valve_bore)}}},
          {"test_pressure_pa", in_pascals(plan.leak_test.pressure)},
          {"stored_energy_j", in_joules(energy.energy)},
          {"tnt_kg", in_kilograms(energy.tnt)},
          {"standoff_m", in_metres(energy.standoff)}};
}

json items_json(const std::vector<plan::ListItem>& items, UnitSystem units) {
  json list = json::array();
  for (const plan::ListItem& item : items)
    list.push_back({{"id", item.id},
                    {"name", item.name},
                    {"size", item_size(item, units)},
                    {"measure", item.measure ? fact_json(*item.measure, units) : json(nullptr)},
                    {"material", item.material},
                    {"qty", item.quantity},
                    {"price_usd", item.priced ? json(in_dollars(item.price())) : json(nullptr)},
                    {"for", item.used_for},
                    {"instead", item.instead},
                    {"shelf", item.shelf}});
  return list;
}

json list_object(const Plan& plan, UnitSystem units) {
  json cut = json::array();
  for (const plan::CutItem& item : plan.list.cut)
    cut.push_back({{"stock", item.stock},
                   {"length_m", in_metres(item.length)},
                   {"qty", item.quantity},
                   {"for", item.used_for},
                   {"offcut_m", in_metres(item.offcut)},
                   {"datum", item.datum}});
  json consumables = json::array();
  for (const plan::Consumable& item : plan.list.consumables)
    consumables.push_back({{"name", item.name}, {"quantity", item.quantity}, {"why", item.why}});
  return {{"buy", items_json(plan.list.buy, units)},
          {"bin", items_json(plan.list.from_bin, units)},
          {"cut", cut},
          {"consumables", consumables},
          {"total_usd", in_dollars(plan.list.total)}};
}

json assumption_json(const plan::Assumption& assumption, UnitSystem units) {
  const SaidAssumption said = say(assumption, units);
  json values = json::array();
  for (const quantity::Value& value : assumption.fact.values) values.push_back(value_json(value, units));
  return {{"what", said.what},     {"value", said.value},          {"why", said.why},
          {"key", assumption.key}, {"code", assumption.fact.code}, {"values", values}};
}

json remark_json(plan::Topic where, const Fact& fact, UnitSystem units) {
  json remark = {{"where", key_of(where)}};
  remark.update(fact_json(fact, units));
  return remark;
}

json refusal_json(const plan::Refusal& refusal, UnitSystem units) {
  const SaidRefusal said = say(refusal, units);
  const auto& numbers = refusal.numbers;
  return {{"where", key_of(refusal.where)},
          {"reason", said.reason},
          {"asked", said.asked},
          {"allowed", said.allowed},
          {"mend", said.mend},
          {"reason_fact", fact_json(refusal.reason, units)},
          {"asked_value", numbers ? value_json(numbers->asked, units) : json(nullptr)},
          {"allowed_value", numbers && numbers->allowed ? value_json(*numbers->allowed, units) : json(nullptr)},
          {"mend_fact", refusal.mend ? fact_json(*refusal.mend, units) : json(nullptr)}};
}

json levels_object(const plan::Levels& levels) {
  return {{"charge_depth_m", in_metres(levels.charge_depth)},
          {"charge_m3", in_cubic_metres(levels.charge)},
          {"need_m3", in_cubic_metres(levels.need)},
          {"usable_m3", in_cubic_metres(levels.usable)},
          {"heel_m3", in_cubic_metres(levels.heel)},
          {"rim_capacity_m3", in_cubic_metres(levels.rim_capacity)},
          {"ullage_m3", in_cubic_metres(levels.ullage_at_charge)},
          {"lift_start_m", in_metres(levels.lift_start)},
          {"lift_full_m", in_metres(levels.lift_full)},
          {"enough", levels.enough},
          {"can_overflow", levels.can_overflow}};
}

}  // namespace

std::string chain_json(const Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                       UnitSystem units, const chain::Spares* spares) {
  json result = answer_json(catalog, request, answer, units);
  if (spares != nullptr) add_spares(catalog, *spares, {}, result);
  return result.dump(1) + "\n";
}

std::string alternatives_json(const Catalog& catalog, const chain::ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, const chain::Spares* spares) {
  json result = {{"ports", spelled_ports(catalog, {request.from.type, request.to.type})},
                 {"chains", json::array()},
                 {"why_none", nullptr},
                 {"shelf_empty", json::array()}};
  for (const chain::Alternative& row : rows) {
    json chain = found_json(catalog, request, row.chain);
    const bool is_best = &row == rows.data();
    chain["reason"] = is_best ? kBestOfAll : reason(rows.front().chain, row.chain, quantity::UnitSystem::inch);
    chain["same_in"] = row.same_in;
    result["chains"].push_back(std::move(chain));
  }
  for (const chain::Substitute& substitute : substitutes)
    result["shelf_empty"].push_back(substitute_json(catalog, request, substitute));
  if (spares != nullptr) add_spares(catalog, *spares, {}, result);
  return result.dump(1) + "\n";
}

std::string riser_json(const reservoir::Riser& riser, UnitSystem units) {
  return riser_object(riser, units).dump(1) + "\n";
}
std::string transfer_json(const Plan& plan) { return transfer_object(plan).dump(1) + "\n"; }
std::string walls_json(const Plan& plan) { return walls_object(plan).dump(1) + "\n"; }
std::string list_json(const Plan& plan, UnitSystem units) { return list_object(plan, units).dump(1) + "\n"; }
std::string list_json(const Plan& plan, const chain::Spares& spares, UnitSystem units) {
  std::vector<std::string> names;
  for (const plan::ConnectionPlan& connection : plan.connections) names.push_back(connection.name);
  json list = list_object(plan, units);
  add_spares(*plan.catalog, spares, names, list);
  return list.dump(1) + "\n";
}

std::string plan_json(const Plan& plan, UnitSystem units) {
  json connections = json::array();
  json manifolds = json::array();
  for (const plan::ConnectionPlan& connection : plan.connections) {
    json entry = {{"name", connection.name},
                  {"from", connection.from},
                  {"to", connection.branched ? json(connection.ends) : json(connection.to)},
                  {"service", connection.service == chain::Service::air ? "air" : "water"}};
    if (connection.branched) {
      entry.update(json::parse(assembly_json(*plan.catalog, *connection.branched, assembly_answer(connection), units)));
      manifolds.push_back(std::move(entry));
      continue;
    }
    entry.update(answer_json(*plan.catalog, connection.request, chain_answer(connection), units));
    entry["all_cautions"] = say_all(connection.cautions, units);
    connections.push_back(std::move(entry));
  }
  json assumptions = json::array();
  for (const plan::Assumption& assumption : plan.assumptions) assumptions.push_back(assumption_json(assumption, units));
  json cautions = json::array();
  for (const plan::Caution& caution : plan.cautions) {
    cautions.push_back(remark_json(caution.where, caution.fact, units));
    cautions.back()["source"] = caution.source;
  }
  json notes = json::array();
  for (const plan::Note& note : plan.notes) notes.push_back(remark_json(note.where, note.fact, units));
  json refusals = json::array();
  for (const plan::Refusal& refusal : plan.refusals) refusals.push_back(refusal_json(refusal, units));
  const json result = {{"name", plan.job.name},
                       {"status", key_of(plan.status)},
                       {"refusals", refusals},
                       {"connections", connections},
                       {"manifolds", manifolds},
                       {"riser", riser_object(plan.riser.riser, units)},
                       {"levels", levels_object(plan.levels)},
                       {"transfer", transfer_object(plan)},
                       {"walls", walls_object(plan)},
                       {"list", list_object(plan, units)},
                       {"figures", figures_json(figures_of(plan), units)},
                       {"assumptions", assumptions},
                       {"cautions", cautions},
                       {"notes", notes}};
  return result.dump(1) + "\n";
}

}  // namespace riserun::report
