// Plain values as JSON.
#pragma once

#include "catalog/catalog.h"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>
#include <vector>

namespace riserun::report {

/// The answer as it is written: indented by one blank, a line break behind it. Characters that may not be printed
/// (quantity/printable.h) stand as JSON's own escapes; bytes that are not UTF-8 as U+FFFD.
std::string written_json(const nlohmann::ordered_json& answer);

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
