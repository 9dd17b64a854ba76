#include "plan/sold.h"

#include "catalog/words/part_search.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <vector>

namespace riserun::plan {

namespace {

using catalog::Catalog;
using catalog::PartId;

/// The cheapest part, of all that the predicate lets in; larger ports first where the price is the same.
template <class Fits>
std::optional<PartId> cheapest(const Catalog& catalog, Fits fits) {
  std::optional<PartId> best;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (fits(part) && (!best || part.price <= catalog.part(*best).price)) best = PartId{row};
  }
  return best;
}

}  // namespace

GaugePressure regulator_range_for(GaugePressure setting) {
  constexpr double kMostOfRange = 0.7;
  constexpr std::array kRangesPsi = {2.0, 5.0, 10.0, 15.0, 30.0, 60.0};
  for (const double range : kRangesPsi)
    if (in_psi(setting) <= kMostOfRange * range) return psig(range);
  return psig(125.0);
}

Length next_drill_down(Length bore) {
  const Length step = inches(1.0 / 64.0);
  return step * std::floor(bore / step);
}

std::optional<PartId> relief_valve_for(const Catalog& catalog, GaugePressure holds, GaugePressure opens_by) {
  const auto is_relief_valve = [&](const catalog::Part& part) {
    return catalog.family(part.family).role == catalog::Role::relief_valve && part.opens_at;
  };
  std::optional<GaugePressure> nearest;
  for (const catalog::Part& part : catalog.parts())
    if (is_relief_valve(part) && *part.opens_at > holds && *part.opens_at <= opens_by &&
        (!nearest || *part.opens_at > *nearest))
      nearest = part.opens_at;
  if (!nearest) return std::nullopt;
  return cheapest(catalog,
                  [&](const catalog::Part& part) { return is_relief_valve(part) && *part.opens_at == *nearest; });
}

std::optional<PartId> gauge_for(const Catalog& catalog, GaugePressure full_scale) {
  constexpr double kSamePressure = 100.0;  // Pa: scales are marked in whole psi
  return cheapest(catalog, [&](const catalog::Part& part) {
    return catalog.family(part.family).role == catalog::Role::gauge && part.full_scale &&
           std::abs(in_pascals(*part.full_scale) - in_pascals(full_scale)) < kSamePressure;
  });
}

std::optional<PartId> vent_valve(const Catalog& catalog) {
  const std::vector<PartId> valves = catalog::find_parts(catalog, "3/4 full-bore ball valve brass");
  return valves.empty() ? std::nullopt : std::optional(valves.front());
}

}  // namespace riserun::plan
