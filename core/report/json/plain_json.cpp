#include "report/json/plain_json.h"

#include "quantity/printable.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace riserun::report {

namespace {

using catalog::Catalog;
using json = nlohmann::ordered_json;

/// In UTF-16, as JSON has it.
std::string escaped(char32_t code) {
  const auto number = static_cast<unsigned>(code);
  if (number < 0x10000) return fmt::format("\\u{:04x}", number);
  return fmt::format("\\u{:04x}\\u{:04x}", 0xD800 + ((number - 0x10000) >> 10U), 0xDC00 + (number & 0x3FFU));
}

}  // namespace

std::string written_json(const json& answer) {
  const std::string text = answer.dump(1, ' ', false, json::error_handler_t::replace);
  std::string result;
  std::string_view rest = text;
  while (const auto found = quantity::first_unprintable(rest)) {
    result += rest.substr(0, found->offset);
    result += found->code == U'\n' ? "\n" : escaped(found->code);
    rest.remove_prefix(found->offset + found->length);
  }
  return result.append(rest) + "\n";
}

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
