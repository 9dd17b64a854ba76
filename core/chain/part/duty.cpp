#include "chain/part/duty.h"

#include <algorithm>

namespace riserun::chain {

using catalog::Duty;
using catalog::HeatShare;
using catalog::InVacuum;
using catalog::UnderAir;

namespace {

// Figures that were written in other units meet their limits to within their rounding.
constexpr double kSameKelvins = 0.01;
constexpr double kSameShare = 1e-9;

bool no_hotter(Temperature a, Temperature b) { return in_kelvins(a) <= in_kelvins(b) + kSameKelvins; }

}  // namespace

Temperature rated_up_to() { return degrees_fahrenheit(73.0); }

std::optional<double> share_at(const Catalog& catalog, PartId part, Temperature hottest) {
  if (no_hotter(hottest, rated_up_to())) return 1.0;
  const Duty* duty = catalog.duty(part);
  if (duty == nullptr) return std::nullopt;
  const auto row = std::find_if(duty->heat.begin(), duty->heat.end(),
                                [&](const HeatShare& share) { return no_hotter(hottest, share.up_to); });
  return row == duty->heat.end() ? std::nullopt : std::optional(row->share);
}

std::optional<GaugePressure> proved_pressure(const Catalog& catalog, PartId id, Service service,
                                             std::optional<Temperature> hottest) {
  GaugePressure pressure = catalog.part(id).rating;
  if (service == Service::air) {
    const Duty* duty = catalog.duty(id);
    if (duty == nullptr || duty->under_air == UnderAir::not_proved) return std::nullopt;
    if (duty->under_air == UnderAir::limited) pressure = std::min(pressure, duty->air_limit);
  }
  if (!hottest) return pressure;
  const std::optional<double> share = share_at(catalog, id, *hottest);
  return share ? std::optional(gauge_pascals(in_pascals(pressure) * *share)) : std::nullopt;
}

std::optional<Temperature> hottest_proved(const Catalog& catalog, PartId part) {
  const Duty* duty = catalog.duty(part);
  return duty == nullptr || duty->heat.empty() ? std::nullopt : std::optional(duty->heat.back().up_to);
}

InVacuum in_vacuum(const Catalog& catalog, PartId part) {
  const Duty* duty = catalog.duty(part);
  return duty == nullptr ? InVacuum::not_proved : duty->vacuum;
}

RunDuty duty_of_run(const Catalog& catalog, const std::vector<PartId>& parts, std::optional<Temperature> heat) {
  const auto weaker = [](auto& all, const auto& one) {
    if (!one || (all && *one < *all)) all = one;
  };
  const auto weakest = [&](std::optional<Temperature> at) {
    std::optional<GaugePressure> least = proved_pressure(catalog, parts.front(), Service::water, at);
    for (const PartId part : parts)
      if (least) weaker(least, proved_pressure(catalog, part, Service::water, at));
    return least;
  };
  RunDuty run;
  run.air = proved_pressure(catalog, parts.front(), Service::air, heat);
  run.hottest = hottest_proved(catalog, parts.front());
  run.vacuum = in_vacuum(catalog, parts.front());
  for (const PartId part : parts) {
    const bool air = stands_compressed_air(catalog, catalog.part(part));
    const auto pressure = air ? proved_pressure(catalog, part, Service::air, heat) : std::nullopt;
    if (run.air) weaker(run.air, pressure);
    if (run.hottest) weaker(run.hottest, hottest_proved(catalog, part));
    const InVacuum vacuum = in_vacuum(catalog, part);
    if (vacuum == InVacuum::collapses || run.vacuum == InVacuum::stands) run.vacuum = vacuum;
  }
  if (run.hottest) run.at_hottest = weakest(run.hottest);
  run.water = weakest(heat);
  return run;
}

bool stands_compressed_air(const Catalog& catalog, const catalog::Part& part) {
  if (!part.air || !catalog.material(part.material).compressed_air) return false;
  return !part.far_material || catalog.material(*part.far_material).compressed_air;
}

bool stands_duty(const Catalog& catalog, PartId part, const ChainRequest& request) {
  const Duty* duty = catalog.duty(part);
  if (duty != nullptr && duty->air_alone && request.service == Service::water && !request.dry) return false;
  if (request.vacuum && in_vacuum(catalog, part) != InVacuum::stands) return false;
  if (request.hottest && !share_at(catalog, part, *request.hottest)) return false;
  if (!request.rating) return true;
  const auto pressure = proved_pressure(catalog, part, request.service, request.hottest);
  return pressure && in_pascals(*pressure) >= in_pascals(*request.rating) * (1.0 - kSameShare);
}

}  // namespace riserun::chain
