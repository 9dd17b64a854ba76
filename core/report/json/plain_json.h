// Plain values as JSON.
#pragma once

#include "catalog/catalog.h"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <vector>

namespace riserun::report {

/// JSON has no infinity: a time that never comes is null.
nlohmann::ordered_json finite(double value);
/// In metres, pascals; null where there is none.
nlohmann::ordered_json optional_length(const std::optional<Length>& value);
nlohmann::ordered_json optional_pressure(const std::optional<GaugePressure>& value);

/// In dollars, of what has a price; null where nothing has.
nlohmann::ordered_json usd_or_null(Price price);

nlohmann::ordered_json spelled_ports(const catalog::Catalog& catalog, const std::vector<catalog::PortTypeId>& ports);
nlohmann::ordered_json ids_of(const catalog::Catalog& catalog, const std::vector<catalog::PartId>& parts);

}  // namespace riserun::report
