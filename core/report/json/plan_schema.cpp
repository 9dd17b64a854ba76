#include "report/json/plan_schema.h"

#include "report/words/plan_keys.h"

#include <nlohmann/json.hpp>

#include <initializer_list>
#include <string_view>

namespace riserun::report {

namespace {

using Json = nlohmann::ordered_json;

/// A key whose value is not measured.
struct Key {
  std::string_view name;
  Json schema;
  std::string_view help;
};

Json text() { return {{"type", "string"}}; }
Json flag() { return {{"type", "boolean"}}; }
Json count() { return {{"type", "integer"}, {"minimum", 0}}; }
Json number() { return {{"type", {"number", "null"}}}; }
Json open_map() { return {{"type", "object"}}; }
Json list_of(const Json& item) { return {{"type", "array"}, {"items", item}}; }
Json or_null(const Json& schema) { return {{"anyOf", {schema, {{"type", "null"}}}}}; }

/// The unit that ends a key, and its name.
constexpr std::pair<std::string_view, std::string_view> kUnits[] = {{"_m", "metres"},
                                                                    {"_m3", "cubic metres"},
                                                                    {"_pa", "pascals"},
                                                                    {"_s", "seconds"},
                                                                    {"_j", "joules"},
                                                                    {"_kg", "kilograms"},
                                                                    {"_usd", "US dollars"},
                                                                    {"_m3_s", "cubic metres a second"},
                                                                    {"_k", "kelvins"},
                                                                    {"_m_s", "metres a second"},
                                                                    {"_pa_per_k", "pascals for each kelvin"}};

/// A map with those keys, and measured ones, all there and no other.
Json map_of(std::initializer_list<Key> keys, std::initializer_list<std::string_view> measured = {}) {
  Json schema{{"type", "object"}, {"properties", Json::object()}, {"required", Json::array()}};
  for (const Key& key : keys) {
    Json& said = schema["properties"][std::string(key.name)] = key.schema;
    if (!key.help.empty()) said["description"] = key.help;
    schema["required"].push_back(key.name);
  }
  for (const std::string_view name : measured) {
    Json& said = schema["properties"][std::string(name)] = number();
    std::string_view longest;  // `_m3_s` is no `_s`
    for (const auto& [unit, what] : kUnits)
      if (name.ends_with(unit) && unit.size() > longest.size()) {
        longest = unit;
        said["description"] = what;
      }
    schema["required"].push_back(name);
  }
  schema["additionalProperties"] = false;
  return schema;
}

Json findings() {
  return list_of(
      map_of({{"severity", {{"enum", {key_of(plan::Severity::not_yet), key_of(plan::Severity::refused)}}}, ""},
              {"where", text(), "the section that it belongs to"},
              {"reason", text(), ""},
              {"asked", text(), "what there is, or is asked for"},
              {"allowed", text(), "what would do"},
              {"mend", text(), "what to buy or to change"},
              {"source", text(), "who says so"},
              {"reason_fact", open_map(), "the reason as code and values"},
              {"asked_value", or_null(open_map()), ""},
              {"allowed_value", or_null(open_map()), ""},
              {"mend_fact", or_null(open_map()), ""},
              {"ways_to_mend", list_of(list_of(map_of({{"key", text(), "of the job"}, {"value", Json::object(), ""}}))),
               "each a way by itself: the keys of the job that change, with their new values"}}));
}

Json items() {
  return list_of(map_of({{"id", text(), "as a bin or `need` may name it"},
                         {"name", text(), ""},
                         {"size", text(), ""},
                         {"measure", or_null(open_map()), ""},
                         {"material", text(), ""},
                         {"qty", count(), ""},
                         {"priced_by", text(), "the file that the price is of; empty: the catalog"},
                         {"beaten_prices", list_of(open_map()), "that it stands in place of"},
                         {"for", list_of(text()), "the runs that it goes into"},
                         {"instead", list_of(text()), "what serves when the shelf has none"},
                         {"shelf", text(), "where a store has it"},
                         {"lies_in", {{"type", "object"}, {"additionalProperties", count()}}, "how many in which bin"}},
                        {"price_usd"}));
}

Json shopping_list() {
  return map_of(
      {{"buy", items(), ""},
       {"bin", items(), "what lies in the bin"},
       {"cut",
        list_of(map_of({{"stock", text(), "what it is cut from"},
                        {"qty", count(), ""},
                        {"for", text(), ""},
                        {"datum", text(), "from where it is measured"},
                        {"note", or_null(open_map()), ""}},
                       {"length_m", "width_m", "thickness_m", "offcut_m"})),
        ""},
       {"consumables", list_of(map_of({{"name", text(), ""}, {"quantity", text(), ""}, {"why", text(), ""}})), ""},
       {"without_price", count(), "how many of the list have no price, and are not in the total"}},
      {"total_usd"});
}

Json walls() {
  return map_of(
      {{"panels",
        list_of(map_of({{"name", text(), ""}, {"small_deflection", flag(), "whether the theory of small bulges holds"}},
                       {"length_m", "width_m", "thickness_m", "stress_pa", "stress_held_pa", "stress_free_pa",
                        "bulge_m", "bulge_held_m", "limit_pa"})),
        ""},
       {"relief",
        map_of({}, {"set_pressure_pa", "must_pass_m3_s", "failed_regulator_pressure_pa", "restrictor_bore_m",
                    "valve_bore_m"}),
        ""}},
      {"checked_at_pa", "design_stress_pa", "limit_pa", "four_to_one_pa", "greatest_pressure_pa", "factor_at_greatest",
       "factor_at_set", "factor_at_full_supply", "test_pressure_pa", "stored_energy_j", "tnt_kg", "standoff_m"});
}

Json riser() {
  return map_of({{"stock", map_of({}, {"length_m", "uncut_length_m"}), ""},
                 {"can_be_drawn_out", flag(), "through its bung"},
                 {"refusals", list_of(text()), ""},
                 {"refusal_facts", list_of(open_map()), ""},
                 {"notes", list_of(text()), ""},
                 {"note_facts", list_of(open_map()), ""},
                 {"held_by", or_null(open_map()), "the run that holds it in its bung"}},
                {"cut_length_m", "clearance_m", "clearance_low_m", "clearance_high_m", "make_up_m", "heel_m3",
                 "curtain_to_bore", "inlet_k", "inlet_k_scatter", "offcut_m"});
}

Json connection() {
  Json schema = map_of({{"name", text(), ""},
                        {"from", text(), ""},
                        {"to", text(), ""},
                        {"service", {{"enum", {"air", "water"}}}, ""},
                        {"chains", list_of(open_map()), "the run that is best; none where there is none"},
                        {"why_none", or_null(open_map()), ""},
                        {"all_cautions", list_of(text()), ""}});
  schema.erase("additionalProperties");  // what was asked for
  return schema;
}

}  // namespace

std::string plan_schema_json() {
  const Json remark = open_map();
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "A plan of Riserun"}};
  schema.update(map_of(
      {{"name", text(), "of the job"},
       {"verdict",
        {{"enum", {key_of(plan::Verdict::ready), key_of(plan::Verdict::not_yet), key_of(plan::Verdict::refused)}}},
        "whether the work may go ahead"},
       {"findings", findings(), "what stands against it, worst first"},
       {"connections", list_of(connection()), "runs between two ports"},
       {"manifolds", list_of(open_map()), "runs with branches"},
       {"riser", riser(), ""},
       {"levels",
        map_of({{"enough", flag(), "whether the charge fills the table"}, {"can_overflow", flag(), "the table's rim"}},
               {"charge_depth_m", "charge_m3", "need_m3", "usable_m3", "heel_m3", "top_up_mark_m", "rim_capacity_m3",
                "ullage_m3", "lift_start_m", "lift_full_m"}),
        ""},
       {"transfer", open_map(), "fill and drain with their histories and losses"},
       {"walls", walls(), ""},
       {"lid_map",
        map_of({{"bungs", list_of(open_map()), "each with its hole and its place"},
                {"seams", list_of(open_map()), "of baffles"},
                {"ties", list_of(open_map()), ""},
                {"openings", list_of(open_map()), "holes and slots over what is welded to the lid from outside"}},
               {"length_m", "width_m", "wall_m", "plate_m"}),
        ""},
       {"leak_test", or_null(open_map()), "null where none may be made"},
       {"list", shopping_list(), ""},
       {"work", list_of(open_map()), "the steps of the whole job in their order"},
       {"figures", list_of(open_map()), "the figures that the book prints, by section"},
       {"assumptions", list_of(open_map()), "what was taken as the job does not say it, and the key that says it"},
       {"cautions", list_of(remark), ""},
       {"notes", list_of(remark), ""}}));
  return schema.dump(1) + "\n";
}

}  // namespace riserun::report
