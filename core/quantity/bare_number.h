// A number without a unit: which unit a shop means by it, where its system of units is settled.
#pragma once

#include "quantity/number_text.h"
#include "quantity/units.h"

#include <optional>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::quantity {

/// The unit that a bare number is read in, or all that a shop could mean by it; empty: none is usual (common practice:
/// a tape is read in inches or millimetres, a gauge in psi or bar; times are told in seconds and in minutes).
std::vector<std::string_view> bare_units(Kind kind, UnitSystem system);

/// The unit of the number that ends the text; or why there is none, with every unit that it could be.
std::variant<const Unit*, ReadError> unit_of_bare(const PlainText& text, const Number& number, const UnitTable& table);

}  // namespace riserun::quantity
