#include "report/json/catalog_json.h"

#include "report/json/plain_json.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::End;
using catalog::end_name;
using json = nlohmann::ordered_json;

json side(const Catalog& catalog, catalog::KindId kind, End end) {
  return {{"kind", catalog.kind(kind).id}, {"end", end_name(end)}};
}

json sizes_of(const Catalog& catalog, const std::vector<std::pair<catalog::SizeId, catalog::SizeId>>& sizes) {
  if (sizes.empty()) return "same";
  json pairs = json::array();
  for (const auto& [a, b] : sizes) pairs.push_back({catalog.size_name(a), catalog.size_name(b)});
  return pairs;
}

json pascals_or_null(const std::optional<GaugePressure>& pressure) {
  return pressure ? json(in_pascals(*pressure)) : json(nullptr);
}

json check_or_null(catalog::CheckKind check) {
  if (check == catalog::CheckKind::none) return nullptr;
  return check == catalog::CheckKind::spring ? "spring" : "swing";
}

json part_json(const Catalog& catalog, const catalog::Part& part) {
  json ports = json::array();
  for (const catalog::Port& port : part.ports) {
    const catalog::PortType& type = catalog.port_type(port.type);
    ports.push_back({{"kind", catalog.kind(type.kind).id},
                     {"size", catalog.size_name(type.size)},
                     {"end", end_name(type.end)},
                     {"bore_m", in_metres(port.bore)},
                     {"reach_m", in_metres(port.reach)},
                     {"heading_degrees", port.heading_degrees}});
  }
  const catalog::Family& family = catalog.family(part.family);
  return {
      {"id", part.id},
      {"name", part.name},
      {"family", family.name},
      {"size", part.size},
      {"material", catalog.material(part.material).name},
      {"price_usd", usd_or_null(part.price)},
      {"rating_pa", in_pascals(part.rating)},
      {"stocked", part.stocked},
      {"role", catalog::role_name(family.role)},
      {"set_pressure_pa", pascals_or_null(family.role == catalog::Role::relief_valve ? part.opens_at : std::nullopt)},
      {"opening_pressure_pa",
       pascals_or_null(family.role == catalog::Role::check_valve ? part.opens_at : std::nullopt)},
      {"check", check_or_null(family.check)},
      {"range_pa", pascals_or_null(part.full_scale)},
      {"close", part.close},
      {"closing", part.closing},
      {"one_way", part.one_way},
      {"arrow", part.arrow},
      {"air", part.air},
      {"across_flats_m", in_metres(part.across_flats)},
      {"outside_diameter_m", in_metres(part.outside_diameter)},
      {"dielectric", part.dielectric},
      {"cut_to_length", part.cut_to_length},
      {"straight_tapped", part.straight_tapped},
      {"weld_bung", family.weld_bung != catalog::WeldBung::none},
      {"source", part.source},
      {"ports", ports}};
}

}  // namespace

std::string catalog_json(const Catalog& catalog, std::span<const catalog::PartId> parts) {
  json result = {{"parts", json::array()}, {"mates", json::array()}, {"lookalikes", json::array()}};
  for (const catalog::PartId id : parts) result["parts"].push_back(part_json(catalog, catalog.part(id)));
  for (const catalog::MatingRule& rule : catalog.mating_rules())
    result["mates"].push_back({{"a", side(catalog, rule.kind_a, rule.end_a)},
                               {"b", side(catalog, rule.kind_b, rule.end_b)},
                               {"sizes", sizes_of(catalog, rule.sizes)},
                               {"seal", rule.seal},
                               {"turning", rule.turning == catalog::Turning::either ? "either" : "neither"},
                               {"closing", rule.closing},
                               {"comes_apart", rule.comes_apart}});
  for (const catalog::LookAlike& pair : catalog.look_alikes())
    result["lookalikes"].push_back({{"a", catalog.kind(pair.kind_a).id},
                                    {"b", catalog.kind(pair.kind_b).id},
                                    {"sizes", pair.sizes.empty() ? json("all") : sizes_of(catalog, pair.sizes)},
                                    {"reason", pair.reason},
                                    {"source", pair.source}});
  return written_json(result);
}

}  // namespace riserun::report
