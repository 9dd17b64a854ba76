#include "report/json/fact_json.h"

#include "report/words/say.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;

// JSON has no infinity.
json in_si(double value, const char* unit) {
  return {{"value", std::isfinite(value) ? json(value) : json(nullptr)}, {"unit", unit}};
}

/// One overload a kind of value.
struct ValueJson {
  UnitSystem units;

  json operator()(const std::string& name) const { return name; }
  json operator()(std::int64_t count) const { return count; }
  json operator()(double number) const { return std::isfinite(number) ? json(number) : json(nullptr); }
  json operator()(Length v) const { return in_si(in_metres(v), "m"); }
  json operator()(Area v) const { return in_si(in_square_metres(v), "m2"); }
  json operator()(Volume v) const { return in_si(in_cubic_metres(v), "m3"); }
  json operator()(Time v) const { return in_si(in_seconds(v), "s"); }
  json operator()(Velocity v) const { return in_si(in_metres_per_second(v), "m/s"); }
  json operator()(Mass v) const { return in_si(in_kilograms(v), "kg"); }
  json operator()(Force v) const { return in_si(in_newtons(v), "N"); }
  json operator()(Energy v) const { return in_si(in_joules(v), "J"); }
  json operator()(Power v) const { return in_si(in_watts(v), "W"); }
  json operator()(VolumeFlow v) const { return in_si(in_cubic_metres_per_second(v), "m3/s"); }
  json operator()(PressureDifference v) const { return in_si(v.in_si(), "Pa"); }
  json operator()(Stress v) const { return in_si(v.in_si(), "Pa"); }
  json operator()(Head v) const { return in_si(v.in_si(), "m of head"); }
  json operator()(TemperatureDifference v) const { return in_si(v.in_si(), "K"); }
  json operator()(GaugePressure v) const { return in_si(v.in_si(), "Pa gauge"); }
  json operator()(AbsolutePressure v) const { return in_si(v.in_si(), "Pa abs"); }
  json operator()(Temperature v) const { return in_si(v.in_si(), "K"); }
  json operator()(Price v) const {
    json value = in_si(in_dollars(v), "usd");
    if (!v.known()) value["without_price"] = v.without_price();
    return value;
  }
  json operator()(const quantity::Texts& names) const { return names; }
  json operator()(const quantity::Facts& facts) const { return facts_json(facts, units); }
};

}  // namespace

json value_json(const quantity::Value& value, UnitSystem units) { return std::visit(ValueJson{units}, value); }

json fact_json(const quantity::Fact& fact, UnitSystem units) {
  json values = json::array();
  for (const quantity::Value& value : fact.values) values.push_back(value_json(value, units));
  return {{"code", fact.code}, {"values", values}, {"text", say(fact, units)}};
}

json facts_json(const quantity::Facts& facts, UnitSystem units) {
  json list = json::array();
  for (const quantity::Fact& fact : facts) list.push_back(fact_json(fact, units));
  return list;
}

}  // namespace riserun::report
