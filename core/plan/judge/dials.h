// Which of the gauges that are sold shows a pressure.
#pragma once

#include "catalog/catalog.h"
#include "quantity/quantities.h"

#include <functional>
#include <optional>
#include <vector>

namespace riserun::plan {

/// The dial reads to between 1.5 and 4 times the pressure (kLeastOfScale, kMostOfScale), as it is printed.
bool scale_shows(GaugePressure full_scale, GaugePressure pressure);

/// What such a dial reads to, at least and at most.
GaugePressure scale_from(GaugePressure pressure);
GaugePressure scale_up_to(GaugePressure pressure);

/// Of the catalog's gauges those for air whose dial shows that pressure best: it reads to the least from twice the
/// pressure on, else to the most below (ASME BPVC Section VIII UG-102, as reported). All of one range, on any shelf, in
/// catalog order; empty: none that is sold shows it.
std::vector<catalog::PartId> gauges_to_show(const catalog::Catalog& catalog, GaugePressure pressure);

/// The same, but of those that show it the ones that are the least off at another pressure that is read on them, as
/// ordinary dials are.
std::vector<catalog::PartId> gauges_least_off(const catalog::Catalog& catalog, GaugePressure shown, GaugePressure read);

/// What an ordinary dial may be off at a pressure (ASME B40.100, grade B); beyond its end as at its end.
PressureDifference dial_error(GaugePressure full_scale, GaugePressure read);

/// Of the dials that show a pressure, what the least one is off there; zero: none shows it.
PressureDifference least_dial_error(const std::vector<GaugePressure>& full_scales, GaugePressure read);

/// The cheapest of `gauges_to_show`, of one price the larger; one that stands the other pressure in its place where it
/// does not and such a one is sold. nullopt: none shows the first.
std::optional<catalog::PartId> gauge_to_buy(const catalog::Catalog& catalog, GaugePressure shown, GaugePressure stood);

/// The cheapest gauge for air whose dial shows one pressure and that stands the other; with that thread if there is
/// such a one. nullopt: none that is sold.
///
/// @param may_be  of its full scale; none: any
std::optional<catalog::PartId> gauge_that_stands(const catalog::Catalog& catalog, GaugePressure shown,
                                                 GaugePressure stood, catalog::PortTypeId thread,
                                                 const std::function<bool(GaugePressure)>& may_be = {});

}  // namespace riserun::plan
