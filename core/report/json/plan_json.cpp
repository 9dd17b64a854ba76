#include "report/json/plan_json.h"

#include "chain/finder.h"
#include "report/figures/figures.h"
#include "report/json/answer_json.h"
#include "report/json/fact_json.h"
#include "report/json/figures_json.h"
#include "report/json/plain_json.h"
#include "report/json/run_json.h"
#include "report/json/sheet_json.h"
#include "report/json/transfer_json.h"
#include "report/text/plan_text.h"
#include "report/words/list_words.h"
#include "report/words/plan_keys.h"
#include "report/words/remark_words.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cstddef>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;
using plan::Plan;

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

json spot_json(const plan::LidSpot& spot) {
  return {{"from_left_m", in_metres(spot.from_left)}, {"from_front_m", in_metres(spot.from_front)}};
}

json side_json(const plan::SidePlace& place) {
  return {{"side", place.in_front ? "front" : "right end"}, {"along_m", in_metres(place.along)}};
}

const char* opening_key(plan::LidOpenings::Over over) {
  constexpr std::array<const char*, 4> kKeys = {"posts", "lid_bars", "uprights", "baffles"};
  return kKeys.at(static_cast<std::size_t>(over));
}

json lid_map_object(const plan::LidMap& map) {
  json bungs = json::array();
  for (const plan::LidBung& bung : map.bungs)
    bungs.push_back({{"port", bung.port},
                     {"where", key_of(bung.place)},
                     {"at", bung.at ? spot_json(*bung.at) : json(nullptr)},
                     {"over_floor_m", optional_length(bung.over_floor)},
                     {"on_side", bung.on_side ? side_json(*bung.on_side) : json(nullptr)},
                     {"proposed", bung.proposed},
                     {"is_there", bung.is_there},
                     {"outside_m", in_metres(bung.outside)},
                     {"hole_m", in_metres(bung.hole)},
                     {"body_m", in_metres(bung.body)},
                     {"turning_m", in_metres(bung.turning)}});
  json seams = json::array();
  for (const plan::LidSeam& seam : map.seams)
    seams.push_back({{"baffle", seam.baffle}, {"across", seam.across}, {"at_m", in_metres(seam.at)}});
  json ties = json::array();
  for (const plan::LidSpot& tie : map.ties) ties.push_back(spot_json(tie));
  json openings = json::array();
  for (const plan::LidOpenings& each : map.openings)
    openings.push_back({{"over", opening_key(each.over)},
                        {"wall", each.wall},
                        {"count", each.count},
                        {"width_m", in_metres(each.width)},
                        {"length_m", in_metres(each.length)},
                        {"apart_m", in_metres(each.apart)},
                        {"open_to_m", in_metres(each.open_to)}});
  return {{"length_m", in_metres(map.length)}, {"openings", std::move(openings)}, {"width_m", in_metres(map.width)},
          {"wall_m", in_metres(map.wall)},     {"plate_m", in_metres(map.plate)}, {"bungs", std::move(bungs)},
          {"seams", std::move(seams)},         {"ties", std::move(ties)}};
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
          {"four_to_one_pa", in_pascals(plan.walls.four_to_one)},
          {"greatest_pressure_pa", in_pascals(plan.relief.greatest)},
          {"factor_at_greatest", plan.relief.factor_at_greatest},
          {"factor_at_set", plan.walls.factor_at_set},
          {"factor_at_full_supply", plan.walls.factor_at_full_supply},
          {"relief",
           {{"set_pressure_pa", in_pascals(plan.relief.set_pressure)},
            {"must_pass_m3_s", in_cubic_metres_per_second(plan.relief.must_pass)},
            {"failed_regulator_pressure_pa", optional_pressure(plan.relief.failed_regulator_pressure)},
            {"restrictor_bore_m", optional_length(plan.relief.restrictor_bore)},
            {"valve_bore_m", optional_length(plan.relief.valve_bore)}}},
          {"test_pressure_pa", plan.leak_test.possible ? json(in_pascals(plan.leak_test.pressure)) : json(nullptr)},
          {"stored_energy_j", in_joules(energy.energy)},
          {"tnt_kg", in_kilograms(energy.tnt)},
          {"standoff_m", in_metres(energy.standoff)}};
}

json items_json(const std::vector<plan::ListItem>& items, UnitSystem units) {
  json list = json::array();
  for (const plan::ListItem& item : items) {
    json places = json::object();
    for (const plan::BinPlace& place : item.lies_in) places[place.bin] = place.count;
    json beaten = json::array();
    for (const catalog::BeatenPrice& price : item.beaten)
      beaten.push_back({{"price_each_usd", usd_or_null(price.price)}, {"priced_by", price.priced_by}});
    list.push_back({{"id", item.id},
                    {"name", item_called(item, units)},
                    {"size", item_size(item, units)},
                    {"measure", item.measure ? fact_json(*item.measure, units) : json(nullptr)},
                    {"material", item.material},
                    {"qty", item.quantity},
                    {"price_usd", usd_or_null(item.price())},
                    {"priced_by", item.priced_by},
                    {"beaten_prices", std::move(beaten)},
                    {"for", item.used_for},
                    {"instead", item.instead},
                    {"shelf", item.shelf},
                    {"lies_in", std::move(places)}});
  }
  return list;
}

json list_object(const Plan& plan, UnitSystem units) {
  json cut = json::array();
  for (const plan::CutItem& item : plan.list.cut)
    cut.push_back({{"stock", stock_words(item.stock, units)},
                   {"length_m", in_metres(item.length)},
                   {"width_m", optional_length(item.width)},
                   {"thickness_m", optional_length(item.thickness)},
                   {"qty", item.quantity},
                   {"for", item.used_for},
                   {"offcut_m", in_metres(item.offcut)},
                   {"datum", item.datum},
                   {"note", item.note ? fact_json(*item.note, units) : json(nullptr)}});
  json consumables = json::array();
  for (const plan::Consumable& item : plan.list.consumables)
    consumables.push_back({{"name", consumable_name(item, units)}, {"quantity", item.quantity}, {"why", item.why}});
  return {{"buy", items_json(plan.list.buy, units)},
          {"bin", items_json(plan.list.from_bin, units)},
          {"cut", cut},
          {"consumables", consumables},
          {"total_usd", in_dollars(plan.list.total)},
          {"without_price", plan.list.total.without_price()}};
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

/// Where the job says it, and what it says there.
json change_json(const Plan& plan, const plan::Change& change, UnitSystem units) {
  if (change.spot)
    return {{"key", "reservoir.ports." + std::get<std::string>(change.value) + ".at"},
            {"value",
             json::array({value_json(change.spot->from_left, units), value_json(change.spot->from_front, units)})}};
  return {{"key", change.key},
          {"value", change.part ? json(plan.catalog->part(*change.part).name) : value_json(change.value, units)}};
}

/// The mend as changes of the job: rows of keys with their new values, each row a way by itself.
json ways_to_mend_json(const Plan& plan, const plan::Finding& finding, UnitSystem units) {
  json ways = json::array();
  for (const plan::Changes& way : finding.ways_to_mend) {
    json changes = json::array();
    for (const plan::Change& change : way) changes.push_back(change_json(plan, change, units));
    ways.push_back(std::move(changes));
  }
  return ways;
}

json finding_json(const Plan& plan, const plan::Finding& finding, UnitSystem units) {
  const SaidFinding said = say(finding, units);
  const auto& numbers = finding.numbers;
  return {{"severity", key_of(finding.severity)},
          {"where", key_of(finding.where)},
          {"reason", said.reason},
          {"asked", said.asked},
          {"allowed", said.allowed},
          {"mend", said.mend},
          {"source", finding.source},
          {"reason_fact", fact_json(finding.reason, units)},
          {"asked_value", numbers ? value_json(numbers->asked, units) : json(nullptr)},
          {"allowed_value", numbers && numbers->allowed ? value_json(*numbers->allowed, units) : json(nullptr)},
          {"mend_fact", finding.mend ? fact_json(*finding.mend, units) : json(nullptr)},
          {"ways_to_mend", ways_to_mend_json(plan, finding, units)}};
}

json levels_object(const plan::Levels& levels) {
  return {{"charge_depth_m", in_metres(levels.charge_depth)},
          {"charge_m3", in_cubic_metres(levels.charge)},
          {"need_m3", in_cubic_metres(levels.need)},
          {"usable_m3", in_cubic_metres(levels.usable)},
          {"heel_m3", in_cubic_metres(levels.heel)},
          {"top_up_mark_m", in_metres(levels.top_up_mark)},
          {"rim_capacity_m3", in_cubic_metres(levels.rim_capacity)},
          {"ullage_m3", in_cubic_metres(levels.ullage_at_charge)},
          {"lift_start_m", in_metres(levels.lift_start)},
          {"lift_full_m", in_metres(levels.lift_full)},
          {"enough", levels.enough},
          {"can_overflow", levels.can_overflow}};
}

/// A section by itself says what the whole is worth, first; of one that is not there that is all.
json with_verdict(const Plan& plan, const json& section) {
  json all = {{"verdict", key_of(plan.verdict)}};
  if (section.is_object()) all.update(section);
  return all;
}

}  // namespace

std::string riser_json(const reservoir::Riser& riser, UnitSystem units) {
  return written_json(riser_object(riser, units));
}
std::string riser_json(const Plan& plan, UnitSystem units) {
  return written_json(with_verdict(plan, riser_object(plan.riser.riser, units)));
}
std::string transfer_json(const Plan& plan) { return written_json(with_verdict(plan, transfer_object(plan))); }
std::string walls_json(const Plan& plan) { return written_json(with_verdict(plan, walls_object(plan))); }
std::string leak_test_json(const Plan& plan, UnitSystem units) {
  return written_json(with_verdict(plan, leak_test_object(plan, units)));
}
std::string list_json(const Plan& plan, UnitSystem units) {
  return written_json(with_verdict(plan, list_object(plan, units)));
}
std::string list_json(const Plan& plan, const chain::Spares& spares, UnitSystem units) {
  std::vector<std::string> names;
  for (const plan::ConnectionPlan& connection : plan.connections) names.push_back(connection.name);
  json list = list_object(plan, units);
  add_spares(*plan.catalog, spares, names, list);
  return written_json(with_verdict(plan, list));
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
      entry.update(answer_json(*plan.catalog, *connection.branched, assembly_answer(connection), units));
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
    cautions.back()["standing"] = caution.standing;
  }
  json notes = json::array();
  for (const plan::Note& note : plan.notes) notes.push_back(remark_json(note.where, note.fact, units));
  json findings = json::array();
  for (const plan::Finding& finding : plan.findings) findings.push_back(finding_json(plan, finding, units));
  json riser = riser_object(plan.riser.riser, units);
  riser["held_by"] = plan.riser.holder ? run_json(*plan.catalog, *plan.riser.holder, {}, units) : json(nullptr);
  const json result = {{"name", plan.job.name},
                       {"verdict", key_of(plan.verdict)},
                       {"findings", findings},
                       {"connections", connections},
                       {"manifolds", manifolds},
                       {"riser", std::move(riser)},
                       {"levels", levels_object(plan.levels)},
                       {"transfer", transfer_object(plan)},
                       {"walls", walls_object(plan)},
                       {"lid_map", lid_map_object(plan.lid_map)},
                       {"leak_test", leak_test_object(plan, units)},
                       {"list", list_object(plan, units)},
                       {"work", work_array(plan, units)},
                       {"figures", figures_json(figures_of(plan), units)},
                       {"assumptions", assumptions},
                       {"cautions", cautions},
                       {"notes", notes}};
  return written_json(result);
}

}  // namespace riserun::report
