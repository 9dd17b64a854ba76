#include "plan/judge/dials.h"

#include "plan/judge/limits.h"
#include "quantity/nearly.h"
#include "reservoir/pressure_decay.h"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace riserun::plan {

namespace {

using catalog::PartId;

double times(GaugePressure full_scale, GaugePressure pressure) { return in_pascals(full_scale) / in_pascals(pressure); }

/// For air, on any shelf, in catalog order.
std::vector<PartId> all_that_show(const catalog::Catalog& catalog, GaugePressure pressure) {
  std::vector<PartId> gauges;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (catalog.family(part.family).role == catalog::Role::gauge && part.air && part.full_scale &&
        catalog.material(part.material).compressed_air && scale_shows(*part.full_scale, pressure))
      gauges.push_back({row});
  }
  return gauges;
}

/// Those of least rank.
std::vector<PartId> first_of(std::vector<PartId> gauges, const std::function<double(PartId)>& rank) {
  const auto best =
      std::min_element(gauges.begin(), gauges.end(), [&](PartId a, PartId b) { return rank(a) < rank(b); });
  if (best == gauges.end()) return gauges;
  const double least = rank(*best);
  std::erase_if(gauges, [&](PartId part) { return quantity::more_than(rank(part), least); });
  return gauges;
}

}  // namespace

bool scale_shows(GaugePressure full_scale, GaugePressure pressure) {
  const double scale = times(full_scale, pressure);
  return quantity::at_most(kLeastOfScale * kAsPrinted, scale) && quantity::at_most(scale, kMostOfScale / kAsPrinted);
}

GaugePressure scale_from(GaugePressure pressure) { return gauge_pascals(kLeastOfScale * in_pascals(pressure)); }
GaugePressure scale_up_to(GaugePressure pressure) { return gauge_pascals(kMostOfScale * in_pascals(pressure)); }

std::vector<PartId> gauges_to_show(const catalog::Catalog& catalog, GaugePressure pressure) {
  constexpr double kPreferred = 2.0;
  constexpr double kBehindAll = 2.0 * kMostOfScale;
  return first_of(all_that_show(catalog, pressure), [&](PartId part) {
    const double scale = times(*catalog.part(part).full_scale, pressure);
    return quantity::at_most(kPreferred, scale) ? scale : kBehindAll - scale;
  });
}

std::vector<PartId> gauges_least_off(const catalog::Catalog& catalog, GaugePressure shown, GaugePressure read) {
  const auto scale = [&](PartId part) { return *catalog.part(part).full_scale; };
  std::vector<PartId> least =
      first_of(all_that_show(catalog, shown), [&](PartId part) { return dial_error(scale(part), read).in_si(); });
  return first_of(std::move(least), [&](PartId part) { return in_pascals(scale(part)); });
}

PressureDifference dial_error(GaugePressure full_scale, GaugePressure read) {
  return reservoir::gauge_error(reservoir::shop_gauge_grade(), full_scale, std::min(read, full_scale));
}

PressureDifference least_dial_error(const std::vector<GaugePressure>& full_scales, GaugePressure read) {
  std::optional<PressureDifference> least;
  for (const GaugePressure scale : full_scales)
    if (scale_shows(scale, read)) least = std::min(least.value_or(dial_error(scale, read)), dial_error(scale, read));
  return least.value_or(PressureDifference());
}

std::optional<PartId> gauge_to_buy(const catalog::Catalog& catalog, GaugePressure shown, GaugePressure stood) {
  const std::vector<PartId> sold = gauges_to_show(catalog, shown);
  if (sold.empty()) return std::nullopt;
  const auto price = [&](PartId part) { return catalog.part(part).price; };
  const PartId part =
      *std::min_element(sold.rbegin(), sold.rend(), [&](PartId a, PartId b) { return price(a) < price(b); });
  if (!quantity::more_than(stood, catalog.part(part).rating)) return part;
  return gauge_that_stands(catalog, shown, stood, catalog.part(part).ports[0].type).value_or(part);
}

std::optional<PartId> gauge_that_stands(const catalog::Catalog& catalog, GaugePressure shown, GaugePressure stood,
                                        catalog::PortTypeId thread, const std::function<bool(GaugePressure)>& may_be) {
  std::optional<PartId> best;
  const auto rank = [&](const catalog::Part& part) { return std::pair(part.ports[0].type != thread, part.price); };
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (catalog.family(part.family).role != catalog::Role::gauge || !part.air || !part.full_scale ||
        !catalog.material(part.material).compressed_air || !scale_shows(*part.full_scale, shown) ||
        quantity::more_than(stood, part.rating) || (may_be && !may_be(*part.full_scale)))
      continue;
    if (!best || rank(part) < rank(catalog.part(*best))) best = PartId{row};
  }
  return best;
}

}  // namespace riserun::plan
