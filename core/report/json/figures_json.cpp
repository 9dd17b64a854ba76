#include "report/json/figures_json.h"

#include "report/json/fact_json.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;

json optional_json(const std::optional<quantity::Value>& value, UnitSystem units) {
  return value ? value_json(*value, units) : json(nullptr);
}

/// The bare number of a quantity: its unit stands beside it once.
json number_of(const json& quantity) { return quantity.is_object() ? quantity["value"] : quantity; }

json figure_json(const Figure& figure, UnitSystem units) {
  const json value = value_json(figure.value, units);
  return {{"key", figure.key},
          {"label", figure.label},
          {"value", number_of(value)},
          {"unit", value.is_object() ? value["unit"] : json(nullptr)},
          {"low", number_of(optional_json(figure.low, units))},
          {"high", number_of(optional_json(figure.high, units))},
          {"limit", figure.limit ? json(in_pascals(*figure.limit)) : json(nullptr)},
          {"also", optional_json(figure.also, units)},
          {"source", said(figure.source, units)}};
}

}  // namespace

json figures_json(const std::vector<FigureGroup>& groups, UnitSystem units) {
  json list = json::array();
  for (const FigureGroup& group : groups) {
    json figures = json::array();
    for (const Figure& figure : group.figures) figures.push_back(figure_json(figure, units));
    list.push_back({{"key", group.key}, {"title", group.title}, {"figures", std::move(figures)}});
  }
  return list;
}

}  // namespace riserun::report
