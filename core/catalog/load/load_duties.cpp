// What parts stand besides their rating: catalog/duty.yaml, and `duties` of a user's file.
#include "catalog/load/loading.h"
#include "quantity/read.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

using quantity::ReadError;
using quantity::Reading;

Reading<Temperature> read_heat(std::string_view text) {
  // Water does not get colder, and no joint compound of the trade is rated hotter (common practice).
  const quantity::Range<Temperature> range{degrees_fahrenheit(32.0), degrees_fahrenheit(500.0)};
  return quantity::within(quantity::read_temperature(text), range, text);
}

Reading<double> read_share(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{0.01, 1.0}, text);
}

/// `{150 F: 1, 200 F: 0.9}`
void read_heat_shares(Loading& loading, const Value& value, Duty& duty) {
  if (!value.exists()) return;
  if (!value.is_map() || value.size() == 0) {
    loading.problems.add(value, value.path() + ": a map is expected here, as in '{150 F: 1, 200 F: 0.9}'");
    return;
  }
  for (const auto& [key, entry] : value.entries()) {
    const auto up_to = read_with(key, read_heat, loading.problems);
    const auto share = read_with(entry, read_share, loading.problems);
    if (!up_to || !share) continue;
    if (!duty.heat.empty() && !(duty.heat.back().up_to < *up_to))
      loading.problems.add(key, value.path() + ": temperatures rise from row to row");
    if (!duty.heat.empty() && *share > duty.heat.back().share)
      loading.problems.add(entry, value.path() + ": a hotter part does not stand more");
    duty.heat.push_back({*up_to, *share});
  }
}

/// `as water`, `not proved` or a pressure.
void read_under_air(Loading& loading, const Value& value, Duty& duty) {
  if (!value.exists()) return;
  const auto text = read_text(value, loading.problems);
  if (!text || *text == "not proved") return;
  if (*text == "as water") {
    duty.under_air = UnderAir::as_water;
    return;
  }
  const Reading<GaugePressure> reading = quantity::read_pressure(*text);
  if (const ReadError* error = std::get_if<ReadError>(&reading)) {
    loading.problems.add(value,
                         value.path() + ": allowed are 'as water', 'not proved' and a pressure: " + error->message,
                         error->offset);
    return;
  }
  duty.under_air = UnderAir::limited;
  duty.air_limit = std::get<GaugePressure>(reading);
}

void read_families(Loading& loading, const Value& value, Duty& duty) {
  for (const Value& name : read_texts(value, loading.problems)) {
    if (const auto family = loading.so_far().find_family(name.text())) {
      duty.families.push_back(*family);
      continue;
    }
    std::vector<std::string_view> names;
    for (const Family& family : loading.so_far().families()) names.push_back(family.name);
    loading.problems.add(name, name.path() + ": no family is called '" + std::string(name.text()) + "'" +
                                   did_you_mean(name.text(), names));
  }
}

void load_duty(Loading& loading, const Value& value) {
  Fields fields(value, {"families", "materials", "heat", "air", "air alone", "vacuum", "source"}, loading.problems);
  if (!fields.valid()) return;
  Duty duty;
  const Value families = fields.find("families");
  const Value materials = fields.find("materials");
  if (families.exists()) read_families(loading, families, duty);
  if (materials.exists())
    for (const Value& name : read_texts(materials, loading.problems))
      if (const auto material = named_material(loading, name)) duty.materials.push_back(*material);
  if (!families.exists() && !materials.exists())
    loading.problems.add(value, value.path() + ": 'families', 'materials' or both say what the duty is of");
  read_heat_shares(loading, fields.find("heat"), duty);
  read_under_air(loading, fields.find("air"), duty);
  duty.air_alone = fields.flag_or("air alone", false);
  duty.vacuum = fields
                    .choice<InVacuum>(fields.find("vacuum"), {{"stands", InVacuum::stands},
                                                              {"collapses", InVacuum::collapses},
                                                              {"not proved", InVacuum::not_proved}})
                    .value_or(InVacuum::not_proved);
  duty.source = fields.need_text("source");
  loading.builder.add(std::move(duty));
}

}  // namespace

void load_duties(Loading& loading, const Value& list) {
  for (const Value& duty : read_list(list, loading.problems)) load_duty(loading, duty);
}

}  // namespace riserun::catalog
