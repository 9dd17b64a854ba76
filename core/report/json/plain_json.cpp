#include "report/json/plain_json.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace riserun::report {

namespace {

using catalog::Catalog;
using json = nlohmann::ordered_json;

}  // namespace

json finite(double value) { return std::isfinite(value) ? json(value) : json(nullptr); }

json optional_length(const std::optional<Length>& value) { return value ? json(in_metres(*value)) : json(nullptr); }

json optional_pressure(const std::optional<GaugePressure>& value) {
  return value ? json(in_pascals(*value)) : json(nullptr);
}

json usd_or_null(Price price) { return price.known() || price.cents() != 0 ? json(in_dollars(price)) : json(nullptr); }

json spelled_ports(const Catalog& catalog, const std::vector<catalog::PortTypeId>& ports) {
  json list = json::array();
  for (const catalog::PortTypeId port : ports) list.push_back(catalog.spelled(port));
  return list;
}

json ids_of(const Catalog& catalog, const std::vector<catalog::PartId>& parts) {
  json ids = json::array();
  for (const catalog::PartId part : parts) ids.push_back(catalog.part(part).id);
  return ids;
}

}  // namespace riserun::report
