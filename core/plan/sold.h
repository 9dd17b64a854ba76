// What is sold: the regulator, relief valve or vent that a mend names.
#pragma once

#include "catalog/catalog.h"
#include "quantity/quantities.h"

#include <optional>
#include <string_view>
#include <vector>

namespace riserun::plan {

/// The narrowest range of a regulator that has the pressure in its lower two thirds (common practice), of those that
/// the catalog has; the widest of them for all above.
GaugePressure regulator_range_for(const catalog::Catalog& catalog, GaugePressure setting);

/// The cheapest regulator that goes up to that; nullopt: the catalog has none.
std::optional<catalog::PartId> regulator_of_range(const catalog::Catalog& catalog, GaugePressure range);

/// The same with that inlet, where it is sold; else as above.
std::optional<catalog::PartId> regulator_for_inlet(const catalog::Catalog& catalog, GaugePressure range,
                                                   catalog::PortTypeId inlet);

/// The drill in 64ths of an inch next below that bore; zero: there is none.
Length next_drill_down(Length bore);

/// ... and next above it, or that bore itself.
Length next_drill_up(Length bore);

/// The widest hole up to that bore of a restrictor that the catalog has; zero: none is so fine.
Length restrictor_sold_up_to(const catalog::Catalog& catalog, Length bore);

/// The relief valve that opens nearest below `opens_by` and still above `holds`, of those the cheapest; nullopt: the
/// catalog has none.
std::optional<catalog::PartId> relief_valve_for(const catalog::Catalog& catalog, GaugePressure holds,
                                                GaugePressure opens_by);

/// A relief valve that opens where that one does and clears the bore or more, the narrowest of those, the cheapest of
/// these; nullopt: the catalog has none.
std::optional<catalog::PartId> wider_relief_valve(const catalog::Catalog& catalog, GaugePressure opens, Length bore);

/// The lowest setting of a relief valve above that pressure, and the highest below it, of those that are sold.
std::optional<GaugePressure> relief_sold_above(const catalog::Catalog& catalog, GaugePressure pressure);
std::optional<GaugePressure> relief_sold_below(const catalog::Catalog& catalog, GaugePressure pressure);

/// A plug of 3/4 in, which leaves a hole for a rod and a funnel (common practice), the cheapest that is stocked.
std::optional<catalog::PartId> fill_plug(const catalog::Catalog& catalog);

/// Parts of that family, by its name or alias, and of that material where one is given; in part order.
std::vector<catalog::PartId> parts_of(const catalog::Catalog& catalog, std::string_view family,
                                      std::string_view material = {});

/// Full-bore ball valves of brass, the smallest first: what a vent is made of.
std::vector<catalog::PartId> vent_valves(const catalog::Catalog& catalog);

/// A ball valve of 3/4 in, wide enough to drain a table through (common practice).
std::optional<catalog::PartId> vent_valve(const catalog::Catalog& catalog);

}  // namespace riserun::plan
