// A number with its unit (or two, as in `1 ft 6 in`), read against a table of units.
#pragma once

#include "quantity/number_text.h"
#include "quantity/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace riserun::quantity {

struct Measured {
  double in_si = 0.0;
  const Unit* unit = nullptr;    // the first that was written
  const Unit* finest = nullptr;  // the last: inches in `1 ft 6 in`
};

/// The whole text, without regard to the table's limits.
std::variant<Measured, ReadError> read_measured(const PlainText& text, const UnitTable& table);

/// The whole text, within the table's limits or those that stand in for them (SI).
std::variant<Measured, ReadError> read_limited(const Written& written, const UnitTable& table,
                                               std::optional<Range<double>> limits = std::nullopt);

/// `12.5 in`: an SI value in the unit, with up to six digits.
std::string limit_text(double in_si, const Unit& unit);

}  // namespace riserun::quantity
