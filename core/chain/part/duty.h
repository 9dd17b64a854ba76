// What a part is proved to stand: pressure of water or air, heat, vacuum. What is not stated is not proved.
#pragma once

#include "chain/ask/request.h"

namespace riserun::chain {

/// A part's rating holds up to there without more: plastic pipe is rated at 73 degF (ASTM D1785), metals above it.
Temperature rated_up_to();

/// Share of the part's rating that is left at that temperature: 1 up to rated_up_to(), then what its duty states for
/// the nearest temperature that is not colder. nullopt: not proved so hot.
std::optional<double> share_at(const Catalog& catalog, PartId part, Temperature hottest);

/// Gauge pressure that the part is proved to stand. nullopt: not proved.
///
/// @param hottest  of what is inside; left out: room temperature
std::optional<GaugePressure> proved_pressure(const Catalog& catalog, PartId part, Service service,
                                             std::optional<Temperature> hottest);

/// The hottest that the part is proved for; nullopt: room temperature only.
std::optional<Temperature> hottest_proved(const Catalog& catalog, PartId part);

catalog::InVacuum in_vacuum(const Catalog& catalog, PartId part);

/// May hold compressed air: made for it, and of no material that shatters.
bool stands_compressed_air(const Catalog& catalog, const catalog::Part& part);

/// The part keeps the request's rating, temperature and vacuum.
bool stands_duty(const Catalog& catalog, PartId part, const ChainRequest& request);

/// What a whole run is proved for: its weakest part, plugs included, in each respect by itself.
struct RunDuty {
  std::optional<GaugePressure> air;         // nullopt: not proved for compressed air
  std::optional<Temperature> hottest;       // nullopt: room temperature only
  std::optional<GaugePressure> at_hottest;  // of water, at that heat
  std::optional<GaugePressure> water;       // at the heat asked about
  catalog::InVacuum vacuum = catalog::InVacuum::stands;
};
/// @param parts  at least one
/// @param heat  of what is inside, where the pressures of air and water count; left out: room temperature
RunDuty duty_of_run(const Catalog& catalog, const std::vector<PartId>& parts, std::optional<Temperature> heat = {});

}  // namespace riserun::chain
